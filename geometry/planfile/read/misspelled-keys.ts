import { type PlanProblem, pointerTo, quoted, type Step } from '../problem.ts';
import { PlanSchema } from '../schema/plan.ts';
import { unknownKeys } from '../schema/walk.ts';
import { describePath } from './describe-path.ts';

/**
 * Returns a problem for every unknown key that differs from a known key of its object in case, by one letter, or both:
 * "Openings", "opening", "detectorz". If it were preserved as an unknown key, its content would silently be missing from
 * the plan. Other unknown keys are preserved.
 */
export function misspelledKeyProblems(file: unknown): readonly PlanProblem[] {
  return unknownKeys(PlanSchema, file).flatMap(({ path, key, expected }) => {
    const meant = expected.find((one) => isMisspelling(key, one));
    return meant === undefined ? [] : [misspelledKeyProblem(file, path, key, meant)];
  });
}

function misspelledKeyProblem(file: unknown, path: readonly Step[], key: string, meant: string): PlanProblem {
  const { item } = describePath(file, path);
  return {
    pointer: pointerTo([...path, key]),
    found: `the key ${quoted(key)}`,
    expected: `the key ${quoted(meant)}`,
    message: `${item} has the key ${quoted(key)}, which is almost ${quoted(meant)}. Write ${quoted(meant)}, or take it out.`,
  };
}

/** Returns whether two keys are equal except for case and at most one replaced, added or missing letter. */
function isMisspelling(key: string, expected: string): boolean {
  const [a, b] = [key.toLowerCase(), expected.toLowerCase()];
  const [short, long] = a.length <= b.length ? [a, b] : [b, a];
  if (long.length - short.length > 1) return false;
  let same = 0;
  while (same < short.length && short[same] === long[same]) same++;
  const rest = short.length === long.length ? short.slice(same + 1) : short.slice(same);
  return rest === long.slice(same + 1);
}
