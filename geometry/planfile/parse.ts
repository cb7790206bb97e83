import type { Plan } from '../plan/model.ts';
import { pointerTo, type Step } from './pointer.ts';
import { foundWords, type PlanProblem, quoted } from './problem.ts';
import { readJson } from './read/json-text.ts';
import { meaningProblems } from './read/meaning.ts';
import { placeOf } from './read/place.ts';
import { slipProblems } from './read/slips.ts';
import { Soundness } from './read/sound.ts';
import { structureProblems } from './read/structure.ts';
import { PlanSchema, VERSION } from './schema/plan.ts';
import { isRecord, withDefaults, withoutControlCharacters } from './schema/walk.ts';

export type { PlanProblem } from './problem.ts';

export type ParsedPlan =
  | { readonly ok: true; readonly plan: Plan }
  | { readonly ok: false; readonly problems: readonly PlanProblem[] };

/**
 * Reads a plan file. Text that is no JSON, no object, of another format or of a newer version has one problem, and the
 * rest is not looked at. After that every problem comes at once, of structure (what the JSON Schema says) first, of
 * meaning (what it cannot say) after. Never throws, never repairs; what was left out is filled in by its default.
 *
 * Unknown keys are kept, a key named __proto__ too, as a plain key; one that is almost a known key is a slip and refused.
 * Control characters are dropped from texts; notes keep their line ends. Coordinates of the plan are finite.
 */
export function parsePlan(text: string): ParsedPlan {
  const json = readJson(text);
  if (!json.ok) return refused([notJson(text, json)]);
  const strange = headProblem(json.value);
  if (strange) return refused([strange]);
  const value = withoutControlCharacters(PlanSchema, json.value);
  const doubled = json.doubled.map((path) => doubledProblem(value, path));
  const structure = structureProblems(value);
  const file = withDefaults(PlanSchema, value);
  const meaning = meaningProblems(file, new Soundness(structure.map(({ path }) => path)));
  const shapes = structure.map(({ path: _, ...problem }) => problem);
  const problems = [...doubled, ...slipProblems(value), ...shapes, ...meaning];
  // Nothing stands against it, so it is what the schema says: a plan.
  return problems.length === 0 ? { ok: true, plan: file as Plan } : refused(problems);
}

function refused(problems: readonly PlanProblem[]): ParsedPlan {
  return { ok: false, problems };
}

function notJson(text: string, at: { line: number; column: number; found: string; expected: string }): PlanProblem {
  if (text.trim() === '' || text === '\uFEFF') {
    return { pointer: '', found: 'an empty file', expected: 'a plan file', message: 'The file is empty.' };
  }
  const place = `line ${at.line}, column ${at.column}`;
  const found = `${at.found} at ${place}`;
  const message = `The file is damaged or is not a plan: ${place} has ${at.found}, needs ${at.expected}.`;
  return { pointer: '', found, expected: at.expected, message };
}

/** The first thing that makes all the rest not worth looking at. */
function headProblem(value: unknown): PlanProblem | null {
  if (!isRecord(value)) {
    const found = foundWords(value);
    return { pointer: '', found, expected: 'an object', message: `The file holds ${found}, not a plan.` };
  }
  const { format, version } = value;
  if (format !== 'stillspot-plan') {
    const [found, expected] = [foundWords(format), '"stillspot-plan"'];
    const message = `This is not a Stillspot plan: "format" is ${format === undefined ? 'missing' : found}, needs ${expected}.`;
    return { pointer: '/format', found, expected, message };
  }
  if (typeof version === 'number' && version > VERSION) {
    const message = `This file is version ${version}; this Stillspot reads version ${VERSION}. Open it with a newer Stillspot.`;
    return { pointer: '/version', found: String(version), expected: String(VERSION), message };
  }
  return null;
}

function doubledProblem(value: unknown, path: readonly Step[]): PlanProblem {
  const key = quoted(String(path.at(-1)));
  const { thing } = placeOf(value, path.slice(0, -1));
  const message = `${thing} has the key ${key} twice. Take one of the two out.`;
  return { pointer: pointerTo(path), found: `the key ${key} twice`, expected: 'each key once', message };
}
