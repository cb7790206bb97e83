import type { Plan } from '../../geometry/plan/model.ts';
import { memoize } from '../../geometry/plane/memoize.ts';
import { recordedEvents } from '../protocol/timing/ahead.ts';
import type { Ms } from '../protocol/timing/clock.ts';
import { testState } from '../protocol/validity/test-state.ts';
import type { TestState } from '../protocol/validity/validity.ts';
import { CACHE_SIZE } from './detector-reports.ts';
import { doubtOf, memoizeUntilDoubt } from './second-opinion.ts';
import { checkedLevels } from './selectors.ts';

/** The states of a plan by the number of its recorded events that are in the future. */
const statesOf = memoizeUntilDoubt((_: Plan) => new Map<number, TestState>(), CACHE_SIZE);
const eventTimes = memoize((plan: Plan): readonly Ms[] => recordedEvents(plan).map(({ at }) => at));

/**
 * Returns the state of the whole test of a plan at rest: the same object for the top bar, every panel and every hint.
 * @param now events that are recorded for a later time have not happened
 */
export function testStateOf(plan: Plan, now: Ms = Date.now()): TestState {
  const states = statesOf(plan);
  const ahead = eventTimes(plan).filter((at) => at > now).length;
  const known = states.get(ahead);
  if (known) return known;
  const levels = checkedLevels(plan).map(({ model, reports }) => ({
    id: model.level.id,
    detectors: reports.map((report) => ({ ...report, doubt: doubtOf(report.id) })),
  }));
  const state = testState(plan, levels, now);
  states.set(ahead, state);
  return state;
}
