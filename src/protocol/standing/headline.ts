import type { Verdict } from '../../../geometry/check/types.ts';
import type { Plan } from '../../../geometry/plan/model.ts';
import { evaluateResults } from '../results/evaluate-results.ts';
import { isConclusive } from '../results/location-report.ts';
import { locationName } from '../results/locations.ts';
import { isRetest } from '../results/next-steps.ts';
import { houseStep } from './house-step.ts';
import { STANDING_HEAD, type StandingStage, type TestState } from './types.ts';

/** The whole test in a line: never greener than its worst part. */
export interface TestHeadline {
  readonly tone: Verdict;
  /** "Not evaluated", "Unknown", "Holds". */
  readonly head: string;
  /** The first cause, or what follows, in a sentence or two. */
  readonly says: string;
  /** How many causes there are beside the first. */
  readonly more: number;
  /** Where the first cause is mended; null where nothing is. */
  readonly stage: StandingStage | null;
}

/** @param state of the same plan */
export function testHeadline(plan: Plan, state: TestState): TestHeadline {
  const [worst, ...others] = state.reasons;
  const head = STANDING_HEAD[state.test];
  if (plan.levels.every(({ detectors }) => detectors.length === 0)) {
    return { tone: 'unknown', head: 'Not begun', says: 'No detector is placed yet.', more: 0, stage: 'place' };
  }
  if (worst) {
    const tone = worst.standing === 'unknown' ? 'unknown' : 'blocked';
    return { tone, head, says: worst.says, more: others.length, stage: worst.stage };
  }
  const sets = evaluateResults(plan, state);
  const open = sets.filter((set) => !isConclusive(set) || isRetest(set.next.id));
  const [first] = open;
  if (first) {
    const says = `${locationName(first)}: ${first.next.says}`;
    return { tone: 'blocked', head: 'Holds, and asks for another test', says, more: open.length - 1, stage: 'read' };
  }
  const house = houseStep(plan, sets);
  if (house.step === 'unknown') {
    return { tone: 'unknown', head: 'Holds so far', says: house.says, more: 0, stage: 'place' };
  }
  const tone = state.notes.length > 0 ? 'tight' : 'clear';
  return { tone, head, says: [...state.notes, house.says].join(' '), more: 0, stage: null };
}
