import type { Plan } from '../../geometry/plan/model.ts';
import { testState } from '../protocol/validity/test-state.ts';
import { MOST_KEPT } from './judged.ts';
import { doubtOf, memoizeUntilDoubt } from './second.ts';
import { checkedLevels } from './selectors.ts';

/** The state of the whole test of a plan at rest: one for the head of the job, every panel and every hint. */
export const testStateOf = memoizeUntilDoubt(
  (plan: Plan) =>
    testState(
      plan,
      checkedLevels(plan).map(({ model, reports }) => ({
        id: model.level.id,
        detectors: reports.map((report) => ({ ...report, doubt: doubtOf(report.id) })),
      })),
    ),
  MOST_KEPT,
);
