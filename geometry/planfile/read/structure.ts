import * as v from 'valibot';
import { pointerTo, type Step } from '../pointer.ts';
import { foundWords, type PlanProblem } from '../problem.ts';
import { PlanSchema } from '../schema/plan.ts';
import { expectedAt } from '../schema/walk.ts';
import { placeOf, valueAt } from './place.ts';

export interface StructureProblem extends PlanProblem {
  readonly path: readonly Step[];
}

/** What of a value does not have the shape of a plan: wrong types, missing keys, unknown choices, numbers out of range. */
export function structureProblems(value: unknown): readonly StructureProblem[] {
  const { issues = [] } = v.safeParse(PlanSchema, value);
  return issues.map((issue) => {
    // JSON has string keys and list indices only.
    const path = (issue.path ?? []).map(({ key }) => key as Step);
    // Not the issue's own input: a list given for an object is hidden from valibot there.
    const there = valueAt(value, path);
    // How long a text or a list may be is said by the limit itself; everything else by what belongs at the place.
    const isLimit = issue.kind === 'validation' && issue.message.startsWith('at ');
    const found = isLimit && typeof there === 'string' ? `text of ${[...there].length} characters` : foundWords(there);
    const expected = isLimit ? issue.message : expectedAt(PlanSchema, path);
    const { thing, key } = placeOf(value, path);
    const what = key === '' ? thing : `${thing}: "${key}"`;
    const is = there === undefined ? 'is missing' : `is ${found}`;
    return { path, pointer: pointerTo(path), found, expected, message: `${what} ${is}, needs ${expected}.` };
  });
}
