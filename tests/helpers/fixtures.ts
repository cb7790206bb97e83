import { readFileSync } from 'node:fs';
import type { Level, Plan } from '../../geometry/plan/model.ts';
import { parsePlan } from '../../geometry/planfile/parse.ts';

/** Returns the plan of `tests/fixtures/NAME.json`; throws with every problem when it is invalid. */
export function fixturePlan(name: string): Plan {
  const result = parsePlan(readFileSync(`tests/fixtures/${name}.json`, 'utf8'));
  if (!result.ok) throw new Error(`${name}: ${result.problems.map(({ message }) => message).join(' ')}`);
  return result.plan;
}

/** Returns the first level of that plan. */
export function fixtureLevel(name: string): Level {
  const [level] = fixturePlan(name).levels;
  if (!level) throw new Error(`${name} has no level`);
  return level;
}
