import type { Plan } from '../../geometry/plan/model.ts';
import { recordedStart } from '../protocol/custody/placed.ts';
import { HOUR, msOf } from '../protocol/timing/clock.ts';
import { kitWindow } from '../protocol/timing/exposure-limits.ts';
import { formatDuration } from '../protocol/timing/format-time.ts';
import { timingReport } from '../protocol/timing/timing-report.ts';
import { formatForOccupants } from '../report/documents/format-times.ts';
import type { CardAnswers } from './answers.ts';
import { hasHours, hoursTrouble } from './schedule.ts';

/** The times of a card in words, in the time zone of the plan, or why there are none. */
export type CardTimes = Times | { readonly known: false; readonly why: string };

interface Times {
  readonly known: true;
  readonly close: string;
  /** Recorded time since which the house is closed; null if not recorded. */
  readonly closed: string | null;
  /** Recorded time at which it was opened again; null if not recorded. */
  readonly opened: string | null;
  /** Whether it was closed later than required. */
  readonly isLate: boolean;
  readonly start: string;
  /** Whether the placement is not recorded yet. */
  readonly isPlanned: boolean;
  readonly fetchFrom: string;
  readonly fetchTo: string;
  /** "48 to 96 hours". */
  readonly hours: string;
  readonly fetched: Fetched | null;
}

/** A recorded pick-up. */
interface Fetched {
  readonly at: string;
  readonly duration: string;
  readonly isInvalid: boolean;
  /** When the laboratory must have the kit; null if not known. */
  readonly laboratoryBy: string | null;
}

/** Returns the times of a plan's visit, as `timingReport` computes them, in words. */
export function cardTimes(plan: Plan, answers: CardAnswers): CardTimes {
  const { visit } = plan;
  const { closeBy, earliestEnd, latestEnd } = timingReport(plan);
  const words = (text: string | null) => formatForOccupants(text, plan);
  const [close, start, fetchFrom, fetchTo] = [closeBy, visit.start, earliestEnd, latestEnd].map(words);
  if (!hasHours(plan, answers) || !close || !start || !fetchFrom || !fetchTo) {
    return { known: false, why: whyNone(plan, answers) };
  }
  const [closed, due] = [msOf(visit.closedSince), msOf(closeBy)];
  return {
    known: true,
    close,
    closed: words(visit.closedSince),
    opened: words(visit.closedUntil ?? null),
    isLate: closed !== null && due !== null && closed > due,
    start,
    isPlanned: recordedStart(visit) === null,
    fetchFrom,
    fetchTo,
    hours: hoursWords(plan),
    fetched: fetchedOf(plan),
  };
}

function hoursWords(plan: Plan): string {
  const { minimumHours, maximumHours } = kitWindow(plan);
  return minimumHours === maximumHours ? `exactly ${minimumHours} hours` : `${minimumHours} to ${maximumHours} hours`;
}

function fetchedOf(plan: Plan): Fetched | null {
  const at = formatForOccupants(plan.visit.end, plan);
  const { exposureHours, laboratoryBy, checks } = timingReport(plan);
  if (!at || exposureHours === null) return null;
  return {
    at,
    duration: formatDuration(exposureHours * HOUR),
    isInvalid: checks.some(({ rule, verdict }) => rule === 'exposure' && verdict === 'blocked'),
    laboratoryBy: formatForOccupants(laboratoryBy, plan),
  };
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

/** Returns whether the planned start has passed, and neither placement nor pick-up is recorded. `now` in ms. */
export function isPast({ visit }: Plan, now: number): boolean {
  const start = msOf(visit.start);
  return visit.startPlanned === true && start !== null && now > start && visit.end === null;
}
