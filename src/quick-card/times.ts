import type { Plan } from '../../geometry/plan/model.ts';
import { msOf } from '../protocol/timing/clock.ts';
import { timingReport } from '../protocol/timing/timing-report.ts';
import { formatForOccupants } from '../report/documents/format-times.ts';
import type { CardAnswers } from './answers.ts';
import { hasHours, hoursTrouble } from './schedule.ts';

/** The times of a card in words, in the time zone of the plan; or why it has none. */
export type CardTimes =
  | {
      readonly known: true;
      readonly close: string;
      readonly start: string;
      readonly fetchFrom: string;
      readonly fetchTo: string;
    }
  | { readonly known: false; readonly why: string };

/** Returns the times of a plan's visit as the card tells them: those of `timingReport`. */
export function cardTimes(plan: Plan, answers: CardAnswers): CardTimes {
  const { closeBy, earliestEnd, latestEnd } = timingReport(plan);
  const [close, start, fetchFrom, fetchTo] = [closeBy, plan.visit.start, earliestEnd, latestEnd].map((text) =>
    formatForOccupants(text, plan),
  );
  if (hasHours(plan, answers) && close && start && fetchFrom && fetchTo) {
    return { known: true, close, start, fetchFrom, fetchTo };
  }
  return { known: false, why: whyNone(plan, answers) };
}

function whyNone(plan: Plan, answers: CardAnswers): string {
  const { leaflet, closing } = answers;
  const trouble = hoursTrouble(plan, leaflet);
  if (trouble) return `No times. ${trouble.why} ${trouble.help}`;
  if (!hasHours(plan, answers)) {
    return 'No times yet: copy from the leaflet the minimum and maximum hours of exposure.';
  }
  if (closing === null) return 'No times yet: choose when the house can be closed.';
  return 'No times: no start fits. Choose another time to close the house.';
}

/** Whether the planned time has passed, and nobody has recorded the placement. */
export function isPast({ visit }: Plan, now: number): boolean {
  const start = msOf(visit.start);
  return visit.startPlanned === true && start !== null && now > start && visit.end === null;
}
