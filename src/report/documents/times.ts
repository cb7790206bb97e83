/** Instants as the papers say them, by the clock of the site. */
import type { Plan } from '../../../geometry/plan/model.ts';
import { unbrokenInstant } from '../../../geometry/units/no-break.ts';
import { msOf, type WallTime, wallTime } from '../../protocol/timing/clock.ts';
import { isLongTerm } from '../../protocol/timing/exposure-window.ts';
import { formatInstant } from '../../protocol/timing/format-time.ts';
import { timingReport } from '../../protocol/timing/timing-report.ts';

/** "Saturday 7 March 2026, 18:00"; `otherwise` where it is not known. */
export function saidAt(text: string | null | undefined, { site }: Plan, otherwise: string): string {
  const at = msOf(text);
  if (at === null) return otherwise;
  return unbrokenInstant(formatInstant(at, site.timeZone).replace(',', ` ${wallTime(at, site.timeZone).year},`));
}

/** "Sat 7 Mar 2026, 18:00", for tables; empty where it is not known. */
export function shortAt(text: string | null | undefined, plan: Plan): string {
  return saidAt(text, plan, '').replace(/^(\p{L}{3})\p{L}* (\d+)\s(\p{L}{3})\p{L}* /u, '$1 $2\u00a0$3 ');
}

/** For people who read no 24 hours: "Saturday 7 March, 18:00 (6 pm)". Null where it is not known. */
export function toldAt(text: string | null | undefined, { site, display }: Plan): string | null {
  const at = msOf(text);
  if (at === null) return null;
  const said = unbrokenInstant(formatInstant(at, site.timeZone));
  const more = partOfDay(wallTime(at, site.timeZone), display.length === 'feet-inches');
  return more ? `${said}\u00a0${more}` : said;
}

/** Midnight is always told in words, for it is taken for the night before or the one after. */
function partOfDay({ hour, minute, weekday }: WallTime, halves: boolean): string {
  const minutes = minute === 0 ? '' : `:${String(minute).padStart(2, '0')}`;
  if (hour === 0 && minute === 0) return `(midnight after\u00a0${DAYS[(weekday + 6) % 7]})`;
  if (!halves) return '';
  if (hour === 12 && minute === 0) return '(noon)';
  return hour < 12 ? '(am)' : `(${hour === 12 ? 12 : hour - 12}${minutes}\u00a0pm)`;
}

const DAYS = ['Sunday', 'Monday', 'Tuesday', 'Wednesday', 'Thursday', 'Friday', 'Saturday'] as const;

export function clockLine({ site }: Plan): string {
  return `All times are by the clock at the house (time zone ${site.timeZone.replaceAll('_', ' ')}).`;
}

/** A date as ISO 8601 writes it, said: "7 March 2026". Anything else is left as it is. */
export function saidDay(date: string): string {
  const at = /^\d{4}-\d{2}-\d{2}$/.test(date) ? Date.parse(`${date}T00:00:00Z`) : Number.NaN;
  if (Number.isNaN(at)) return date;
  return `${formatInstant(at, 'UTC').replace(/^\p{L}+ |,.*$/gu, '')} ${date.slice(0, 4)}`;
}

/** One time of the test, in words; null is to be written in by hand. */
export interface TestTime {
  readonly name: string;
  readonly at: string | null;
  /** What holds as long as it is not arranged. */
  readonly otherwise: string;
}

/** From when to when. `said` is how an instant is put into words; `printed` is the day of the paper: a closing that it says is over is no advice. */
export function testTimes(
  plan: Plan,
  said: (text: string | null | undefined, plan: Plan) => string | null,
  printed: string,
): readonly TestTime[] {
  const { closeBy } = timingReport(plan);
  const { start, closedSince } = plan.visit;
  const closed: TestTime = {
    name: 'House closed from',
    at: said(closedSince ?? (closeBy && closeBy.slice(0, 10) >= printed ? closeBy : null), plan),
    // ANSI/AARST MAH-2019, Exh. 2 and 4: 12 h before a test of less than 4 days.
    otherwise: 'at least 12 hours before the detectors come',
  };
  return [
    ...(isLongTerm(plan) ? [] : [closed]),
    { name: 'Detectors set out', at: said(start, plan), otherwise: 'not arranged yet' },
    { name: 'Detectors fetched', at: fetchedWords(plan, said), otherwise: 'not arranged yet' },
  ];
}

/** The pick-up, or the first and last moment that the kit allows; null where neither is known. */
export function fetchedWords(
  plan: Plan,
  said: (text: string | null | undefined, plan: Plan) => string | null,
): string | null {
  const { earliestEnd, latestEnd } = timingReport(plan);
  const [from, to] = [said(earliestEnd, plan), said(latestEnd, plan)];
  return said(plan.visit.end ?? plan.visit.plannedEnd, plan) ?? (from && to ? `between ${from} and ${to}` : null);
}
