import type { Plan } from '../../geometry/index.ts';
import { counted, listed } from '../../geometry/words.ts';
import { conditionsReport } from '../job/conditions/report.ts';
import { timingReport } from '../job/timing/report.ts';
import { saidAt } from './parts.ts';

/** What the people in the house are asked, an item a sentence. */
export function askedOfOccupants(plan: Plan): readonly string[] {
  return conditionsReport(plan)
    .rows.filter(({ state, item }) => state !== 'not-applicable' && item.notice !== '')
    .map(({ item }) => item.notice);
}

/** From when to when, in words; what is not arranged yet says so. */
export function whenWords(plan: Plan): readonly (readonly [string, string])[] {
  const { closeBy, earliestEnd, latestEnd } = timingReport(plan);
  const { start, end, closedSince } = plan.visit;
  const open = 'to be arranged';
  const window = `between ${saidAt(earliestEnd, plan, open)} and ${saidAt(latestEnd, plan, open)}`;
  const fetched = saidAt(end, plan, start ? window : open);
  return [
    ['House closed from', saidAt(closedSince ?? closeBy, plan, 'at least 12 hours before the detectors come')],
    ['Detectors set out', saidAt(start, plan, open)],
    ['Detectors fetched', fetched],
  ];
}

/** "2 detectors: K1 and K2" */
export function detectorsInWords({ levels }: Plan): string {
  const names = levels.flatMap(({ detectors }) => detectors.map(({ id, label }) => label.trim() || id));
  return names.length > 0 ? `${counted(names.length, 'detector')}: ${listed(names)}` : 'No detector is placed yet';
}

/** Why it matters, for people who have never heard of it. */
export const WHY_CLOSED =
  'Radon is a gas from the ground that nobody can see or smell. A short test is only right while the house stays shut: air from outside thins the gas, and the result looks lower than it is.';

export const IF_BROKEN =
  'If something on this list went wrong, tell the tester what it was and for how long. Nobody is blamed. A wrong result is worse than a second test.';
