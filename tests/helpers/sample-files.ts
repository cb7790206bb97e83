import { readdirSync, readFileSync } from 'node:fs';
import type { Plan } from '../../geometry/plan/model.ts';
import { parsePlan } from '../../geometry/planfile/parse.ts';

const FOLDER = 'samples';
const ENDING = '.plan.json';

/** Values calculated by hand for a sample: see `samples/README.md`. Lengths in mm, areas in m². */
export interface Expected {
  readonly plan: string;
  readonly levels: readonly {
    readonly id: string;
    readonly rooms: readonly { readonly id: string | null; readonly floorArea: number; readonly why: string }[];
    readonly detectors: readonly {
      readonly id: string;
      readonly verdict: string;
      readonly room: string | null;
      readonly checks: readonly ExpectedCheck[];
    }[];
  }[];
}
export interface ExpectedCheck {
  readonly rule: string;
  readonly subject: string | null;
  readonly required?: number;
  readonly measured?: number;
  readonly margin?: number;
  readonly notRun?: boolean;
  readonly verdict: string;
  readonly why: string;
}

/** Names of all samples, without extension, in order. */
export const SAMPLE_NAMES: readonly string[] = readdirSync(FOLDER)
  .filter((name) => name.endsWith(ENDING))
  .map((name) => name.slice(0, -ENDING.length))
  .sort();

export function sampleText(name: string): string {
  return readFileSync(`${FOLDER}/${name}${ENDING}`, 'utf8');
}

/** Returns a sample as a plan; throws with every problem when it is invalid. */
export function samplePlan(name: string): Plan {
  const result = parsePlan(sampleText(name));
  if (!result.ok) throw new Error(`${name}: ${result.problems.map(({ message }) => message).join(' ')}`);
  return result.plan;
}

export function sampleExpected(name: string): Expected {
  return JSON.parse(readFileSync(`${FOLDER}/${name}.expected.json`, 'utf8')) as Expected;
}
