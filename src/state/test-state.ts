import type { Plan } from '../../geometry/plan/model.ts';
import { testState } from '../protocol/validity/test-state.ts';
import { CACHE_SIZE } from './detector-reports.ts';
import { doubtOf, memoizeUntilDoubt } from './second-opinion.ts';
import { checkedLevels } from './selectors.ts';

/** Returns the state of the whole test of a plan at rest: the same object for the top bar, every panel and every hint. */
export const testStateOf = memoizeUntilDoubt(
  (plan: Plan) =>
    testState(
      plan,
      checkedLevels(plan).map(({ model, reports }) => ({
        id: model.level.id,
        detectors: reports.map((report) => ({ ...report, doubt: doubtOf(report.id) })),
      })),
    ),
  CACHE_SIZE,
);
