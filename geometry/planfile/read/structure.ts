import * as v from 'valibot';
import { foundWords, type PlanProblem, pointerTo, type Step } from '../problem.ts';
import { PlanSchema } from '../schema/plan.ts';
import { expectedAt } from '../schema/walk.ts';
import { describePath, valueAt } from './describe-path.ts';

export interface StructureProblem extends PlanProblem {
  readonly path: readonly Step[];
}

/** Returns what does not match the schema: wrong types, missing keys, unknown choices, numbers out of range. */
export function structureProblems(value: unknown): readonly StructureProblem[] {
  const { issues = [] } = v.safeParse(PlanSchema, value);
  return issues.map((issue) => {
    // Paths in JSON consist of string keys and array indices only.
    const path = (issue.path ?? []).map(({ key }) => key as Step);
    // Not `issue.input`: valibot hides an array that was given for an object.
    const there = valueAt(value, path);
    // For a length limit, the issue's own message is the expectation; otherwise it is what the schema expects at the
    // path.
    const isLimit = issue.kind === 'validation' && issue.message.startsWith('at ');
    const found = isLimit && typeof there === 'string' ? `text of ${[...there].length} characters` : foundWords(there);
    const expected = isLimit ? issue.message : expectedAt(PlanSchema, path);
    const { item, key } = describePath(value, path);
    const what = key === '' ? item : `${item}: "${key}"`;
    const is = there === undefined ? 'is missing' : `is ${found}`;
    return { path, pointer: pointerTo(path), found, expected, message: `${what} ${is}, needs ${expected}.` };
  });
}
