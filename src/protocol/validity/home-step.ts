import { levelsToTest } from '../../../geometry/check/needed-locations.ts';
import { counted, listed } from '../../../geometry/messages/index.ts';
import type { Plan } from '../../../geometry/plan/model.ts';
import type { LocationReport } from '../results/location-report.ts';
import { MOST_CAUTIOUS_FIRST, NEXT_STEPS, type NextStepId } from '../results/next-steps.ts';

/** The one step for the whole house, or "unknown" while something that the profile asks for is open. */
export interface HomeStep {
  readonly step: NextStepId;
  readonly text: string;
}

/**
 * The most cautious step over the locations of a house. Unknown while a level that the profile of the plan wants tested has fewer
 * locations with results that stand than it asks for; what those that stand ask for already is said beside it.
 */
export function homeStep(plan: Plan, sets: readonly LocationReport[]): HomeStep {
  const standing = sets.filter(({ state }) => state.validity === 'holds');
  const worst = mostCautious(standing.map(({ next }) => next.id));
  const open = levelsWithoutResult(plan, standing);
  if (worst && worst !== 'wait-for-the-rest' && open.length === 0 && standing.length === sets.length)
    return { step: worst, text: NEXT_STEPS[worst].text };
  const so = open.length > 0 ? `Not known yet for the house: ${listed(open)}.` : 'Not known yet for the house.';
  const already = worst && asksNow(worst) ? ` What stands already asks for it: ${NEXT_STEPS[worst].text}` : '';
  return { step: 'unknown', text: so + already };
}

/** Steps of locations that hold and let the home go say nothing while another location is open. */
const asksNow = (step: NextStepId): boolean =>
  MOST_CAUTIOUS_FIRST.indexOf(step) < MOST_CAUTIOUS_FIRST.indexOf('not-evaluated');

const mostCautious = (steps: readonly NextStepId[]): NextStepId | null =>
  MOST_CAUTIOUS_FIRST.find((step) => steps.includes(step)) ?? null;

/** Each level that lacks a result, in words. */
function levelsWithoutResult(plan: Plan, standing: readonly LocationReport[]): readonly string[] {
  return levelsToTest(plan).flatMap(({ level, needed }) => {
    const here = standing.filter(({ set }) => set.level.id === level.id).length;
    if (here >= needed) return [];
    const name = level.name.trim() || 'a level without a name';
    return here === 0 && needed === 1
      ? [`${name} has no result that stands`]
      : [`${name} has ${here} of ${counted(needed, 'location')} with a result that stands`];
  });
}
