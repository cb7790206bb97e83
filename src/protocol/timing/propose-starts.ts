import type { Plan } from '../../../geometry/plan/model.ts';
import type { Practice, Weekday } from '../../../geometry/plan/test-record.ts';
import { DAY, HOUR, instantAt, MINUTE, type Ms, wallTime } from './clock.ts';
import { isLongTerm, kitWindow, leastExposure } from './exposure-limits.ts';
import { CLOSED_BEFORE, limitWords, MITIGATION_BEFORE } from './limits.ts';
import { hasMitigation } from './mitigation.ts';
import { visitTimes } from './visit-times.ts';

/** Working hours if the plan has none: common practice, no published source. */
export const USUAL_PRACTICE: Practice = {
  days: (['mon', 'tue', 'wed', 'thu', 'fri'] as const).map((day) => ({ day, from: '08:00', to: '18:00' })),
  daysOff: [],
};

const WEEKDAYS: readonly Weekday[] = ['sun', 'mon', 'tue', 'wed', 'thu', 'fri', 'sat'];
/** Starts are proposed on the half hour; a pick-up window at least this long is preferred. */
const STEP: Ms = 30 * MINUTE;

/** A span of working hours. */
export interface Shift {
  readonly from: Ms;
  readonly to: Ms;
}

/** A start within every limit, with the pick-ups it allows. */
interface Proposal {
  readonly start: Ms;
  /** Working hours within the kit's window, in order of time. */
  readonly pickUps: readonly Shift[];
}

/** The first start of a shift, or why it has none. */
export type DayProposal =
  | { readonly day: Ms; readonly ok: true; readonly proposal: Proposal }
  | { readonly day: Ms; readonly ok: false; readonly reason: string };

/** Returns the working hours of `count` days from `from` on, in the site's zone; a day off has none. */
export function shifts({ days, daysOff }: Practice, zone: string, from: Ms, count: number): readonly Shift[] {
  const first = wallTime(from, zone);
  return Array.from({ length: count }, (_, index) => {
    // A clock change never moves noon to another date.
    const noon = wallTime(instantAt({ ...first, day: first.day + index, hour: 12, minute: 0 }, zone), zone);
    const date = `${noon.year}-${String(noon.month).padStart(2, '0')}-${String(noon.day).padStart(2, '0')}`;
    if (daysOff.includes(date)) return [];
    const at = (time: string) =>
      instantAt({ ...noon, hour: Number(time.slice(0, 2)), minute: Number(time.slice(3)) }, zone);
    return days
      .filter(({ day }) => day === WEEKDAYS[noon.weekday])
      .map((hours) => ({ from: at(hours.from), to: at(hours.to) }))
      .sort((a, b) => a.from - b.from);
  }).flat();
}

/**
 * Returns for each shift of the next days the first start within every limit (closed-building conditions, running time of a mitigation
 * system, a pick-up in working hours within the kit's window), or why it has none. Unrecorded conditions are assumed to begin now.
 * @param days number of days to look ahead
 */
export function proposeStarts(plan: Plan, now: Ms, days = 10): readonly DayProposal[] {
  const practice = plan.practice ?? USUAL_PRACTICE;
  const { mitigation } = visitTimes(plan);
  const closed = closedStill(plan, now);
  const allowed = kitWindow(plan);
  const [least, most] = [leastExposure(allowed), allowed.maximumHours * HOUR];
  const lastLook = days + Math.ceil(most / DAY) + 1;
  const work = shifts(practice, plan.site.timeZone, now, lastLook);
  const long = isLongTerm(plan);
  const closedFrom = long ? now : Math.max(now, (closed ?? now) + CLOSED_BEFORE.duration);
  const running = mitigation ?? (hasMitigation(plan) ? now : null);
  const mitigated = running === null ? now : running + (long ? 0 : MITIGATION_BEFORE.duration);
  const from = Math.max(closedFrom, mitigated);
  return work
    .filter((shift) => shift.to > now && shift.from < now + days * DAY)
    .map((shift): DayProposal => {
      const day = shift.from;
      if (shift.to < from) {
        const why =
          closedFrom >= mitigated
            ? `the house will not have been closed for ${limitWords(CLOSED_BEFORE)} by then`
            : `the system will not have run for ${limitWords(MITIGATION_BEFORE)} by then`;
        return { day, ok: false, reason: why };
      }
      const starts: Proposal[] = [];
      for (let start = halfHour(Math.max(shift.from, from)); start <= shift.to; start += STEP) {
        const pickUps = work.flatMap((later) => within(later, start + least, start + most));
        if (pickUps.length > 0) starts.push({ start, pickUps });
      }
      // Prefer a start that leaves half an hour for the pick-up.
      const proposal =
        starts.find(({ pickUps }) => pickUps.some(({ from: first, to }) => to - first >= STEP)) ?? starts[0];
      if (proposal) return { day, ok: true, proposal };
      return { day, ok: false, reason: 'the whole pick-up window is outside the working hours' };
    });
}

/** Returns since when the building is closed; null if that is not recorded, or if it was opened since. */
function closedStill(plan: Plan, now: Ms): Ms | null {
  const { closed, opened } = visitTimes(plan);
  const isOpen = closed !== null && opened !== null && opened >= closed && opened <= now;
  return isOpen ? null : closed;
}

const halfHour = (at: Ms): Ms => Math.ceil(at / STEP) * STEP;

function within({ from, to }: Shift, least: Ms, most: Ms): readonly Shift[] {
  const [first, last] = [Math.max(from, least), Math.min(to, most)];
  return last >= first ? [{ from: first, to: last }] : [];
}
