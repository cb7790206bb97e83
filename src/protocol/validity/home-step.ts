import { levelsMaybeOnGround } from '../../../geometry/check/level.ts';
import { levelsToTest } from '../../../geometry/check/needed-locations.ts';
import { countLocations } from '../../../geometry/check/side-by-side.ts';
import { counted, listed } from '../../../geometry/messages/index.ts';
import type { Plan } from '../../../geometry/plan/model.ts';
import { levelName } from '../../../geometry/plan/nouns.ts';
import type { LocationReport } from '../results/location-report.ts';
import { MOST_CAUTIOUS_FIRST, NEXT_STEPS, type NextStepId } from '../results/next-steps.ts';

/** The next step for the whole home; "unknown" while a level that the profile requires lacks valid results. */
export interface HomeStep {
  readonly step: NextStepId;
  readonly text: string;
}

/**
 * Returns the most cautious next step over the locations of a home. The step of a valid location that calls for action now is returned even
 * if another location is not valid. "unknown" while a level that the profile requires has fewer locations with valid results than required;
 * the text then adds the action that the valid results already call for.
 */
export function homeStep(plan: Plan, sets: readonly LocationReport[]): HomeStep {
  const valid = sets.filter(({ state }) => state.validity === 'holds');
  const worst = mostCautious(valid.map(({ next }) => next.id));
  const open = levelsWithoutResult(plan, valid);
  const allValid = valid.length === sets.length;
  if (worst && worst !== 'wait-for-the-rest' && open.length === 0 && (allValid || asksNow(worst)))
    return {
      step: worst,
      text: `${NEXT_STEPS[worst].text}${allValid ? '' : ' Not every location has a valid result.'}`,
    };
  const so = open.length > 0 ? `Not known yet for the house: ${listed(open)}.` : 'Not known yet for the house.';
  const already = worst && asksNow(worst) ? ` The valid results already call for it: ${NEXT_STEPS[worst].text}` : '';
  return { step: 'unknown', text: so + already };
}

/** Whether a step calls for action now. Other steps are not named while a location is missing. */
const asksNow = (step: NextStepId): boolean =>
  MOST_CAUTIOUS_FIRST.indexOf(step) < MOST_CAUTIOUS_FIRST.indexOf('not-evaluated');

const mostCautious = (steps: readonly NextStepId[]): NextStepId | null =>
  MOST_CAUTIOUS_FIRST.find((step) => steps.includes(step)) ?? null;

/** Returns a phrase for each level that lacks valid results, or for which it is not answered whether it is to be tested. */
function levelsWithoutResult(plan: Plan, valid: readonly LocationReport[]): readonly string[] {
  const asked = levelsMaybeOnGround(plan).map(
    (level) => `what is under the floor of ${levelName(level)} is not answered`,
  );
  const lacking = levelsToTest(plan).flatMap(({ level, needed }) => {
    const here = countLocations(
      valid.filter(({ set }) => set.level.id === level.id).flatMap(({ set }) => set.detectors),
    );
    if (here >= needed) return [];
    const name = levelName(level);
    return here === 0 && needed === 1
      ? [`${name} has no valid result`]
      : [`${name} has ${here} of ${counted(needed, 'location')} with a valid result`];
  });
  return [...lacking, ...asked];
}
