import { pointerTo, type Step } from '../pointer.ts';
import { type PlanProblem, quoted } from '../problem.ts';
import { PlanSchema } from '../schema/plan.ts';
import { unknownKeys } from '../schema/walk.ts';
import { placeOf } from './place.ts';

/**
 * Every unknown key that differs from a known key of its object in case or by one letter, or both: "Openings", "opening",
 * "detectorz". As a further key it would be kept and never read, and what it holds would be missing from the plan without
 * a word. Any other unknown key is kept.
 */
export function slipProblems(file: unknown): readonly PlanProblem[] {
  return unknownKeys(PlanSchema, file).flatMap(({ path, key, known }) => {
    const meant = known.find((one) => isSlip(key, one));
    return meant === undefined ? [] : [slipProblem(file, path, key, meant)];
  });
}

function slipProblem(file: unknown, path: readonly Step[], key: string, meant: string): PlanProblem {
  const { thing } = placeOf(file, path);
  return {
    pointer: pointerTo([...path, key]),
    found: `the key ${quoted(key)}`,
    expected: `the key ${quoted(meant)}`,
    message: `${thing} has the key ${quoted(key)}, which is almost ${quoted(meant)}. Write ${quoted(meant)}, or take it out.`,
  };
}

/** Whether two keys differ in nothing but case and at most one letter: another, one more, or one less. */
function isSlip(key: string, known: string): boolean {
  const [a, b] = [key.toLowerCase(), known.toLowerCase()];
  const [short, long] = a.length <= b.length ? [a, b] : [b, a];
  if (long.length - short.length > 1) return false;
  let same = 0;
  while (same < short.length && short[same] === long[same]) same++;
  const rest = short.length === long.length ? short.slice(same + 1) : short.slice(same);
  return rest === long.slice(same + 1);
}
