import type { Plan } from '../../geometry/plan/model.ts';
import { counted } from '../../geometry/plan/nouns.ts';
import type { Practice, Visit } from '../../geometry/plan/test-record.ts';
import { DAY, HOUR, instantAt, instantText, MINUTE, type Ms, msOf, wallTime } from '../protocol/timing/clock.ts';
import { kitWindow } from '../protocol/timing/exposure-limits.ts';
import { MOST_CLOSED } from '../protocol/timing/limits.ts';
import { proposeStarts } from '../protocol/timing/propose-starts.ts';
import type { CardAnswers, Leaflet } from './answers.ts';

/** Hours in which people are at home and awake, weekends too: common practice, no published source. */
export const WAKING_HOURS: Practice = {
  days: (['mon', 'tue', 'wed', 'thu', 'fri', 'sat', 'sun'] as const).map((day) => ({
    day,
    from: '07:00',
    to: '22:00',
  })),
  daysOff: [],
};

/** Returns why no test can meet the hours of the leaflet, and what would help; null if one can. */
export function hoursTrouble(plan: Plan, { minimumHours: least, maximumHours: most }: Leaflet): HoursTrouble | null {
  if (most === null) return null;
  if (least !== null && least > most) {
    return {
      why: `A kit cannot be exposed for at least ${counted(least, 'hour')} and at most ${counted(most, 'hour')}.`,
      help: 'Check the two figures on the leaflet again.',
    };
  }
  if (most * HOUR > MOST_CLOSED.duration) {
    return {
      why: `A kit that is exposed for up to ${counted(most, 'hour')} is for a long-term test.`,
      help: `This card is for a short test with the house closed, of at most ${MOST_CLOSED.duration / DAY} days. Check the hours again; for a long-term kit follow its leaflet.`,
    };
  }
  const window = kitWindow({ ...plan, kit: { ...plan.kit, minimumHours: least ?? 0, maximumHours: most } });
  if (window.maximumHours >= window.minimumHours) return null;
  return {
    why: `With at most ${counted(most, 'hour')} no test is possible: it takes at least ${window.minimumHours} hours.`,
    help: 'Check the hours on the leaflet again, or ask the laboratory.',
  };
}

export interface HoursTrouble {
  readonly why: string;
  readonly help: string;
}

/** Returns whether the leaflet has both hours, and a test can meet them. */
export const hasHours = (plan: Plan, { leaflet }: CardAnswers): boolean =>
  leaflet.minimumHours !== null && leaflet.maximumHours !== null && hoursTrouble(plan, leaflet) === null;

/**
 * Returns the first start after the house is closed whose pick-up is in waking hours, ms; null if there is none, or while the leaflet's
 * hours or the closing are not known.
 */
export function scheduledStart(plan: Plan, answers: CardAnswers, now: Ms): Ms | null {
  const closing = msOf(answers.closing);
  if (closing === null || !hasHours(plan, answers)) return null;
  const closed = closing === closedStill(plan.visit) ? closing : Math.max(now, closing);
  // A planned closing is not recorded in the plan; for the proposals it is taken as the time since which the house is closed.
  const { closedUntil: _, ...others } = plan.visit;
  const visit = { ...others, closedSince: instantText(closed, plan.site.timeZone) };
  const from = Math.max(now, closed);
  const first = proposeStarts({ ...plan, practice: WAKING_HOURS, visit }, from).find((day) => day.ok);
  return first?.ok ? first.proposal.start : null;
}

/** Returns since when the house is closed, as recorded, ms; null if that is not recorded, or if the house was opened again. */
export const closedStill = ({ closedSince, closedUntil }: Visit): Ms | null =>
  closedUntil == null ? msOf(closedSince) : null;

/** A time at which the house could be closed. */
export interface Closing {
  readonly words: string;
  readonly at: Ms;
}

/** The hours of the proposals: common practice, no published source. */
const MORNING = 8;
const EVENING = 20;
const SATURDAY = 6;

/** Returns proposals for closing the house: now, the next evening and morning, and the weekend. */
export function closingProposals(now: Ms, zone: string): readonly Closing[] {
  const today = wallTime(now, zone);
  const at = (days: number, hour: number) => instantAt({ ...today, day: today.day + days, hour, minute: 0 }, zone);
  const evening = now < at(0, EVENING) - HOUR ? 0 : 1;
  const toSaturday = (SATURDAY - today.weekday + 7) % 7 || 7;
  const minute = Math.ceil(now / MINUTE) * MINUTE;
  const proposals: readonly Closing[] = [
    { words: 'Now', at: minute },
    { words: evening === 0 ? 'This evening' : 'Tomorrow evening', at: at(evening, EVENING) },
    { words: 'Tomorrow morning', at: at(1, MORNING) },
    { words: 'Friday evening', at: at(toSaturday - 1, EVENING) },
    { words: 'Saturday morning', at: at(toSaturday, MORNING) },
  ];
  return proposals.filter((one, k) => one.at >= now && proposals.findIndex((other) => other.at === one.at) === k);
}
