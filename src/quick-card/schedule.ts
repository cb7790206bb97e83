import type { Plan } from '../../geometry/plan/model.ts';
import type { Practice } from '../../geometry/plan/test-record.ts';
import { HOUR, instantAt, instantText, MINUTE, type Ms, msOf, wallTime } from '../protocol/timing/clock.ts';
import { kitWindow } from '../protocol/timing/exposure-limits.ts';
import { proposeStarts } from '../protocol/timing/propose-starts.ts';
import type { CardAnswers } from './answers.ts';

/** When somebody is at home and awake, weekends too: common practice, no published source. */
export const WAKING_HOURS: Practice = {
  days: (['mon', 'tue', 'wed', 'thu', 'fri', 'sat', 'sun'] as const).map((day) => ({
    day,
    from: '07:00',
    to: '22:00',
  })),
  daysOff: [],
};

/** Whether the leaflet's hours are known and leave a window for a short-term test. */
export function hoursProblem(plan: Plan, { leaflet }: CardAnswers): 'none' | 'missing' | 'reversed' | 'no-window' {
  const { minimumHours, maximumHours } = leaflet;
  if (minimumHours === null || maximumHours === null) return 'missing';
  if (minimumHours > maximumHours) return 'reversed';
  const window = kitWindow({ ...plan, kit: { ...plan.kit, minimumHours, maximumHours } });
  return window.maximumHours < window.minimumHours ? 'no-window' : 'none';
}

/**
 * Returns the first start after the house is closed that leaves the pick-up in waking hours; null while the leaflet's hours or the closing
 * are not known, or where there is none.
 */
export function scheduledStart(plan: Plan, answers: CardAnswers, now: Ms): Ms | null {
  const closing = msOf(answers.closing);
  if (closing === null || hoursProblem(plan, answers) !== 'none') return null;
  const from = Math.max(now, closing);
  // The closing is only planned: it is not recorded in the plan, and here it says when the house will be closed.
  const closed = { ...plan.visit, closedSince: instantText(from, plan.site.timeZone) };
  const first = proposeStarts({ ...plan, practice: WAKING_HOURS, visit: closed }, from).find((day) => day.ok);
  return first?.ok ? first.proposal.start : null;
}

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
