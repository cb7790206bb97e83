import type { Plan } from '../../../geometry/plan/model.ts';
import { DAY, HOUR, type Ms, wallTime } from './clock.ts';
import { firstPickUp, isLongTerm, labDaysAreKnown } from './exposure-limits.ts';
import { formatDate, formatDuration, formatInstant } from './format-time.ts';
import { laboratoryBy, postBy } from './laboratory.ts';
import { POST_TAKES } from './limits.ts';
import { visitTimes } from './visit-times.ts';

/** Half-life of radon-222, ms: 3.8235 days (nuclear data tables, from memory). */
const HALF_LIFE: Ms = 3.8235 * 24 * HOUR;

/** Returns the fraction of radon left in a sealed detector after `since` ms, 0 to 1. */
export function fractionLeft(since: Ms): number {
  return 2 ** (-Math.max(0, since) / HALF_LIFE);
}

/** Returns the factor by which the relative counting error has grown after `since` ms: 1/√(fraction left). */
export function errorGrowth(since: Ms): number {
  return 1 / Math.sqrt(fractionLeft(since));
}

/** An instant on the way to the laboratory. */
export interface DecayMark {
  readonly kind: 'deadline' | 'post-by' | 'posted' | 'received';
  readonly at: Ms;
  /** Days of 24 hours since the pick-up. */
  readonly days: number;
  /** Fraction of radon left, 0 to 1. */
  readonly left: number;
  readonly text: string;
}

/** The decay curve from the pick-up on, with the laboratory's deadline and the recorded times. */
export interface DecayCourse {
  /** Whether the pick-up has not happened yet. */
  readonly projected: boolean;
  readonly from: Ms;
  /** Length of the time axis, whole days. */
  readonly span: number;
  readonly curve: readonly { readonly days: number; readonly left: number }[];
  /** Ticks of the time axis with the site's date at the hour of the pick-up: "29 Nov", then "30" within a month. */
  readonly ticks: readonly { readonly days: number; readonly date: string }[];
  /** In order of time. Those beyond `span` are listed and not drawn. */
  readonly marks: readonly DecayMark[];
  readonly notes: readonly string[];
}

/** Maximum length of the time axis, days: no laboratory deadline is later. */
const WIDEST = 30;
const POINTS = 60;
const TICKS = 4;

/** Returns the decay curve; null while neither pick-up nor start is known, and for a continuous monitor, which is read on site. */
export function decayCourse(plan: Plan): DecayCourse | null {
  const { start, end, planned, posted, received } = visitTimes(plan);
  const { kit, visit, site } = plan;
  const from = end ?? (start === null ? null : firstPickUp(plan, start));
  // Long-term detectors contain no charcoal: their tracks do not decay.
  if (from === null || visit.device === 'monitor' || isLongTerm(plan)) return null;
  const mark = (kind: DecayMark['kind'], at: Ms, words: string): DecayMark => {
    const left = fractionLeft(at - from);
    return {
      kind,
      at,
      days: (at - from) / DAY,
      left,
      text: `${words} ${formatInstant(at, site.timeZone)}: ${percent(left)} left`,
    };
  };
  const known = (at: Ms | null): at is Ms => end !== null && at !== null && at >= end;
  const marks = [
    ...(labDaysAreKnown(plan)
      ? [
          mark('post-by', postBy(from, kit.labDays), 'Mail by'),
          mark('deadline', laboratoryBy(from, kit.labDays), 'At the laboratory by'),
        ]
      : []),
    ...(known(posted) ? [mark('posted', posted, 'Mailed')] : []),
    ...(known(received) ? [mark('received', received, 'At the laboratory')] : []),
  ].sort((a, b) => a.at - b.at);
  const span = Math.min(WIDEST, Math.max(TICKS, Math.ceil(Math.max(0, ...marks.map(({ days }) => days)) + 0.5)));
  return {
    projected: end === null || planned,
    from,
    span,
    curve: Array.from({ length: POINTS + 1 }, (_, index) => {
      const days = (span * index) / POINTS;
      return { days, left: fractionLeft(days * DAY) };
    }),
    ticks: ticksOf(from, span, site.timeZone),
    marks,
    notes: decayNotes(plan, from, fetchedAs(end, planned)),
  };
}

function ticksOf(from: Ms, span: number, zone: string): DecayCourse['ticks'] {
  const step = Math.ceil(span / TICKS);
  let before = 0;
  return Array.from({ length: Math.floor(span / step) + 1 }, (_, index) => {
    const at = from + index * step * DAY;
    const { day, month } = wallTime(at, zone);
    const date = month === before ? String(day) : formatDate(at, zone, { short: true });
    before = month;
    return { days: index * step, date };
  });
}

type Fetched = 'fetched' | 'planned' | 'first possible';

function fetchedAs(end: Ms | null, planned: boolean): Fetched {
  if (end === null) return 'first possible';
  return planned ? 'planned' : 'fetched';
}

function decayNotes(plan: Plan, from: Ms, fetched: Fetched): readonly string[] {
  const { kit, site } = plan;
  const isKnown = labDaysAreKnown(plan);
  const whole = kit.labDays * DAY;
  const growth = errorGrowth(whole).toFixed(1);
  const post = Math.min(whole, POST_TAKES.duration);
  const limit = isKnown
    ? `At the laboratory's limit the counting error is ${growth} times that of a count at the pick-up. `
    : '';
  return [
    fetched === 'fetched'
      ? ''
      : `If it is picked up ${formatInstant(from, site.timeZone)}, the ${fetched} moment. A later pick-up moves all of it.`,
    `${limit}Half of the radon decays in under four days: mail on the day of the pick-up.`,
    isKnown ? `"Mail by" leaves ${formatDuration(post)} for the mail: ${POST_TAKES.sources[0]?.cite}.` : '',
  ].filter(Boolean);
}

const percent = (left: number): string => `${Math.round(100 * left)}%`;
