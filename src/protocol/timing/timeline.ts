import type { Plan } from '../../../geometry/plan/model.ts';
import { DAY, HOUR, instantAt, type Ms, wallTime } from './clock.ts';
import {
  firstPickUp,
  hoursAreKnown,
  isLongTerm,
  kitWindow,
  labDaysAreKnown,
  leastOfTerm,
  mostOfTerm,
  pickUpWindow,
} from './exposure-limits.ts';
import { formatDay, formatDuration, formatShortInstant, formatTimeOfDay } from './format-time.ts';
import { laboratoryBy } from './laboratory.ts';
import { CLOSED_BEFORE, limitWords, MITIGATION_BEFORE, SHORT_TEST } from './limits.ts';
import { visitTimes } from './visit-times.ts';

/** A bar of the timeline. */
export interface TimelineBar {
  readonly name: string;
  readonly from: Ms;
  readonly to: Ms;
  /** "needed": a required duration; "done": recorded; "open": the kit's window, or planned. */
  readonly kind: 'needed' | 'done' | 'open';
  /** The reason for its length; empty for recorded times. */
  readonly why: string;
}

export interface Timeline {
  readonly from: Ms;
  readonly to: Ms;
  /** In the order of the visit. A bar that began long before it, e.g. of a mitigation system, begins before `from`. */
  readonly bars: readonly TimelineBar[];
  /** Midnights in the site's zone within the timeline: all of them, or one in `everyDays` if there are too many. */
  readonly midnights: readonly Ms[];
  readonly everyDays: number;
}

/** Longest time before the start that the timeline shows, ms: more than any list requires. */
const LONGEST_BEFORE: Ms = 7 * DAY;
/** Largest number of midnights that can be drawn as distinct marks. */
const MOST_MARKS = 100;

/** Returns the visit as bars on one time scale; null while the start is not known. */
export function timelineOf(plan: Plan): Timeline | null {
  const { start } = visitTimes(plan);
  if (start === null) return null;
  const bars = [...before(plan, start), ...after(plan, start)];
  const from = Math.max(start - LONGEST_BEFORE, Math.min(...bars.map((bar) => bar.from)));
  const to = Math.max(...bars.map((bar) => bar.to));
  const everyDays = Math.max(1, Math.ceil((to - from) / DAY / MOST_MARKS));
  return { from, to, bars, everyDays, midnights: midnightsBetween(from, to, plan.site.timeZone, everyDays) };
}

/**
 * Returns "Sat 7 Mar, 6:00 to 18:00", with the second date if it differs, and with the year of a date if it is not that of `now`.
 */
export function formatSpan({ from, to }: Pick<TimelineBar, 'from' | 'to'>, zone: string, now: Ms = from): string {
  const [first, last] = [from, to].map((at) => formatDay(at, zone, { short: true, year: true }));
  const until = first === last ? formatTimeOfDay(to, zone) : formatShortInstant(to, zone, now);
  return `${formatShortInstant(from, zone, now)} to ${until}`;
}

function before(plan: Plan, start: Ms): readonly TimelineBar[] {
  const { end, planned, closed, opened, mitigation } = visitTimes(plan);
  const isOver = end !== null && !planned;
  const until = end ?? firstPickUp(plan, start);
  const needed = (name: string, lead: Ms, why: string): TimelineBar => ({
    name,
    from: start - lead,
    to: start,
    kind: 'needed',
    why,
  });
  const bar = (of: Pick<TimelineBar, 'name' | 'kind' | 'why'>, since: Ms | null, to = until): readonly TimelineBar[] =>
    since === null || since >= to ? [] : [{ ...of, from: since, to }];
  const done = (name: string) => ({ name, kind: 'done', why: '' }) as const;
  /** A bar up to a pick-up that is not recorded: its end may be in the future. */
  const ahead = (name: string) =>
    ({ name, kind: 'open', why: 'Until the pick-up, which is not recorded yet.' }) as const;
  const lead = formatDuration(CLOSED_BEFORE.duration);
  const runs = formatDuration(MITIGATION_BEFORE.duration);
  const house = isLongTerm(plan)
    ? []
    : [
        needed(
          'Closed before, required',
          CLOSED_BEFORE.duration,
          `Closed for ${lead} before a test of less than ${limitWords(SHORT_TEST)}.`,
        ),
        ...(isOver || opened !== null
          ? bar(done('House closed'), closed, Math.min(opened ?? until, until))
          : bar(ahead('House to stay closed'), closed)),
      ];
  return [
    ...house,
    ...(mitigation === null
      ? []
      : [
          ...(isLongTerm(plan)
            ? []
            : [
                needed(
                  'System on before, required',
                  MITIGATION_BEFORE.duration,
                  `The system runs for ${runs} before a test.`,
                ),
              ]),
          ...bar(isOver ? done('System on') : ahead('System to stay on'), mitigation),
        ]),
  ];
}

function after(plan: Plan, start: Ms): readonly TimelineBar[] {
  const { end, planned, received } = visitTimes(plan);
  const { kit, visit } = plan;
  const fetched = end ?? firstPickUp(plan, start);
  const term = leastOfTerm(plan);
  const shorter =
    kit.minimumHours * HOUR < term.duration ? `, and ${term.name} takes ${formatDuration(term.duration)} at least` : '';
  const most = mostOfTerm(plan);
  const longer = kit.maximumHours * HOUR > most ? `, and ${term.name} takes ${formatDuration(most)} at most` : '';
  const laboratory: readonly TimelineBar[] =
    visit.device === 'monitor'
      ? []
      : [
          ...(labDaysAreKnown(plan)
            ? [
                {
                  name: 'To the laboratory',
                  from: fetched,
                  to: laboratoryBy(fetched, kit.labDays),
                  kind: 'open',
                  why: `The laboratory must have it within ${kit.labDays} days of the pick-up${fetchedNote(end, planned)}.`,
                } as const,
              ]
            : []),
          ...(received === null || end === null || received < end
            ? []
            : [{ name: 'On its way', from: end, to: received, kind: 'done', why: '' } as const]),
        ];
  const window: TimelineBar = {
    name: 'Pick-up window',
    ...pickUpWindow(start, kitWindow(plan)),
    kind: 'open',
    why: `The kit requires ${kit.minimumHours} to ${kit.maximumHours} h${shorter}${longer}.`,
  };
  return [
    ...(hoursAreKnown(plan) ? [window] : []),
    ...(end === null ? [] : [laidOut(start, end, planned)]),
    ...laboratory,
  ];
}

/** A planned exposure is "open", never "done". */
const laidOut = (from: Ms, to: Ms, planned: boolean): TimelineBar =>
  planned
    ? {
        name: 'Exposure, as planned',
        from,
        to,
        kind: 'open',
        why: 'The pick-up is planned, and not recorded yet.',
      }
    : { name: 'Exposure', from, to, kind: 'done', why: '' };

function fetchedNote(end: Ms | null, planned: boolean): string {
  if (end === null) return ', here the first possible one';
  return planned ? ', here the planned one' : '';
}

function midnightsBetween(from: Ms, to: Ms, zone: string, everyDays: number): readonly Ms[] {
  const first = wallTime(from, zone);
  const midnights: Ms[] = [];
  for (let day = first.day + 1; ; day += everyDays) {
    const at = instantAt({ ...first, day, hour: 0, minute: 0 }, zone);
    if (at > to) return midnights;
    midnights.push(at);
  }
}
