import { readFileSync } from 'node:fs';
import type { Level, Plan } from '../../geometry/plan/model.ts';
import { parsePlan } from '../../geometry/planfile/parse.ts';

/** The plan of `tests/fixtures/NAME.json`; throws with every problem when the reader refuses it. */
export function fixturePlan(name: string): Plan {
  const result = parsePlan(readFileSync(`tests/fixtures/${name}.json`, 'utf8'));
  if (!result.ok) throw new Error(`${name}: ${result.problems.map(({ message }) => message).join(' ')}`);
  return result.plan;
}

/** Its first level. */
export function fixtureLevel(name: string): Level {
  const [level] = fixturePlan(name).levels;
  if (!level) throw new Error(`${name} has no level`);
  return level;
}
