import { listed } from '../../../geometry/messages/index.ts';
import type { Plan } from '../../../geometry/plan/model.ts';
import type { Forecast, Visit } from '../../../geometry/plan/test-record.ts';
import { HOUR, type Ms, msOf } from './clock.ts';
import { isLongTerm } from './exposure-limits.ts';
import { formatDuration, formatInstant } from './format-time.ts';
import { limitWords, SEVERE_STORM, SHORT_TEST, WIND_LIMIT } from './limits.ts';
import type { TimingCheck } from './timing-check.ts';
import { type VisitTimes, visitTimes } from './visit-times.ts';

/** The international mile, exactly. */
const KMH_PER_MPH = 1.609344;
type Lengths = Plan['display']['length'];

/** Returns the wind unit that fits the plan's length unit: the file holds km/h. */
export function windUnit(lengths: Lengths): { readonly name: 'mph' | 'km/h'; readonly kmh: number } {
  return lengths === 'metric' ? { name: 'km/h', kmh: 1 } : { name: 'mph', kmh: KMH_PER_MPH };
}

/** Returns "30 mph", "47.9 km/h", rounded to a hundredth, so that a wind below the limit does not read as the limit. */
export function formatWind(kmh: number, lengths: Lengths): string {
  const unit = windUnit(lengths);
  return `${Math.round((100 * kmh) / unit.kmh) / 100} ${unit.name}`;
}

const LIMIT = `no test of less than ${limitWords(SHORT_TEST)} in a severe storm or in sustained wind of ${WIND_LIMIT.words} or more.`;
/** Request before a test that may be shorter than `SHORT_TEST`. */
export const LOOK_UP_THE_FORECAST = `Look up the forecast before the start and note it: ${LIMIT}`;

/** Returns the forecast with its time and source as far as noted, without a period at the end. */
export function describeForecast({ at, source, sustained, storm }: Forecast, { site, display }: Plan): string {
  const looked = msOf(at);
  const when = looked === null ? '' : ` of ${formatInstant(looked, site.timeZone)}`;
  const where = source.trim() ? ` (${source.trim()})` : '';
  const wind = sustained === null ? 'wind not noted' : `sustained wind of ${formatWind(sustained, display.length)}`;
  const storms = new Map([
    [true, ', a severe storm'],
    [false, ', no severe storm'],
  ]);
  return `Forecast${when}${where}: ${wind}${storm === null ? '' : storms.get(storm)}`;
}

const BARE: Forecast = { at: null, source: '', sustained: null, storm: null, note: '' };

/** Returns the visit with its forecast changed; an empty forecast is removed. */
export function withForecast(visit: Visit, patch: Partial<Forecast>): Visit {
  const forecast = { ...BARE, ...visit.forecast, ...patch };
  const { forecast: _, ...others } = visit;
  const { at, source, sustained, storm, note } = forecast;
  const empty = at === null && sustained === null && storm === null && !source.trim() && !note.trim();
  return empty ? others : { ...others, forecast };
}

/**
 * Returns the check of the forecast for a test of less than `SHORT_TEST`. "Unknown" if a part is not noted, or the forecast was looked up
 * after the start: the text requires it to be looked up and recorded before.
 */
export function weatherCheck(plan: Plan, { start, end }: VisitTimes): TimingCheck {
  const { forecast } = plan.visit;
  const check = (verdict: TimingCheck['verdict'], detail: string): TimingCheck => ({
    rule: 'weather',
    verdict,
    detail,
    sources: [...WIND_LIMIT.sources, ...SEVERE_STORM.sources],
  });
  if (isLongTerm(plan)) return check('not-run', 'A long-term test takes the weather as it comes.');
  if (!forecast) {
    return check(
      'not-run',
      plan.visit.end ? `No forecast from before the start is on record: ${LIMIT}` : LOOK_UP_THE_FORECAST,
    );
  }
  const found = describeForecast(forecast, plan);
  const windy = forecast.sustained !== null && forecast.sustained >= WIND_LIMIT.kmh;
  if (windy || forecast.storm) {
    const limit = windy ? windLimitWords(forecast.sustained ?? 0) : '';
    if (lastsLong(plan, start, end)) {
      return check(
        'tight',
        `${found}.${limit} The test runs ${limitWords(SHORT_TEST)} or longer; note the weather with the result.`,
      );
    }
    return check(
      'blocked',
      `${found}.${limit} Postpone the test. If it ran anyway, note why and what the weather was, and test again in calm weather.`,
    );
  }
  const gaps = gapsOf(forecast);
  if (gaps.length > 0) return check('unknown', `${found}. Not noted yet: ${listed(gaps)}.`);
  if (start === null) {
    return check('unknown', `${found}. The start is not recorded, so whether this is its forecast is not known.`);
  }
  const looked = msOf(forecast.at);
  if (looked !== null && looked > start) {
    return check(
      'unknown',
      `${found}. It was looked up ${formatDuration(looked - start)} after the start, and must be before it. Note what the weather was during the test.`,
    );
  }
  const before = looked === null ? '' : ` Looked up ${formatDuration(start - looked)} before the start.`;
  return check('clear', `${found}.${before}`);
}

/** Returns whether a test of less than `SHORT_TEST` lacks its forecast. The check is then not run: the test can be valid without it. */
export function lacksForecast(plan: Plan): boolean {
  return needsForecast(plan) && !plan.visit.forecast;
}

/** Returns whether a test needs a forecast: short-term and less than `SHORT_TEST`. */
export function needsForecast(plan: Plan): boolean {
  const { start, end } = visitTimes(plan);
  return !isLongTerm(plan) && !lastsLong(plan, start, end);
}

/** The source gives 30 mph as 48 km/h, which is slightly less: the lower figure counts. */
function windLimitWords(kmh: number): string {
  const between = kmh < WIND_LIMIT.mph * KMH_PER_MPH;
  return ` The limit is ${WIND_LIMIT.words}${between ? '; of the two figures the lower one counts' : ''}.`;
}

/** Whether the test is as long as `SHORT_TEST`. Before the pick-up the kit's minimum counts. */
function lastsLong({ kit }: Plan, start: Ms | null, end: Ms | null): boolean {
  const exposure = start === null || end === null ? kit.minimumHours * HOUR : end - start;
  return exposure >= SHORT_TEST.duration;
}

function gapsOf({ at, source, sustained, storm }: Forecast): readonly string[] {
  return [
    sustained === null ? 'the sustained wind' : '',
    storm === null ? 'whether a severe storm was forecast' : '',
    at === null ? 'when it was looked up' : '',
    source.trim() ? '' : 'where it was read',
  ].filter(Boolean);
}
