import type { Plan } from '../../geometry/plan/model.ts';
import { guidance } from '../advice/guidance.ts';
import type { StageState } from '../advice/stages.ts';
import type { Ms } from '../protocol/timing/clock.ts';
import type { Validity } from '../protocol/validity/validity.ts';
import { checkedLevels } from './selectors.ts';
import { testStateOf } from './test-state.ts';

/** Returns what is done and missing at each stage of a plan at rest. Judges the whole test, so it is not part of the start. */
export const guidanceOf = (plan: Plan, inViewId: string, now: Ms): readonly StageState[] =>
  guidance(plan, checkedLevels(plan), testStateOf(plan), inViewId, now);

/** Returns whether the test of a plan at rest is valid. */
export const validityOf = (plan: Plan): Validity => testStateOf(plan).validity;
