import type { Plan } from '../../geometry/plan/model.ts';
import { msOf } from '../protocol/timing/clock.ts';
import { timingReport } from '../protocol/timing/timing-report.ts';
import { formatForOccupants } from '../report/documents/format-times.ts';
import type { CardAnswers } from './answers.ts';
import { hoursProblem } from './schedule.ts';

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
  const problem = hoursProblem(plan, answers);
  if (problem === 'none' && close && start && fetchFrom && fetchTo) {
    return { known: true, close, start, fetchFrom, fetchTo };
  }
  return { known: false, why: whyNone(problem, answers) };
}

function whyNone(problem: ReturnType<typeof hoursProblem>, { closing }: CardAnswers): string {
  if (problem === 'missing') {
    return 'No times yet: copy from the leaflet the minimum and maximum hours of exposure.';
  }
  if (problem === 'reversed') {
    return 'No times: the kit cannot be exposed for more hours at least than at most. Check the two figures again.';
  }
  if (problem === 'no-window') {
    return 'No times: with the hours of this leaflet no test of at least 48 hours is possible. Check them again, or ask the laboratory.';
  }
  if (closing === null) return 'No times yet: choose when the house can be closed.';
  return 'No times: no start fits. Choose another time to close the house.';
}

/** Whether the time to close the house has passed without the kit being set out: the card is then made again. */
export function isPast(plan: Plan, now: number): boolean {
  const start = msOf(plan.visit.start);
  return start !== null && now > start && plan.visit.end === null;
}
