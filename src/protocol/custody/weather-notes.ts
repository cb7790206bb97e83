import type { Plan } from '../../../geometry/plan/model.ts';
import type { WeatherNote } from '../../../geometry/plan/test-record.ts';
import type { Source } from '../../../geometry/rules/types.ts';
import { ILLINOIS_COPY, MSQA } from '../sources.ts';
import { msOf } from '../timing/clock.ts';
import { formatInstant } from '../timing/format-time.ts';
import { recordedStart } from './placed.ts';

/** What a technician on site notes about the weather. */
export const WEATHER_TO_NOTE: readonly string[] = [
  'Outdoor temperatures, lowest and highest',
  'Rain or snow',
  'Wind',
  'Unusual storms',
];
export const WEATHER_TO_NOTE_SOURCES: readonly Source[] = [
  MSQA('Companion D, 2.3.7-2.3.10'),
  ILLINOIS_COPY('(o)(1) (severe weather)'),
];

export interface DatedWeatherNote {
  readonly note: WeatherNote;
  /** Index in the plan's list. */
  readonly index: number;
  /** Time in words, with "before the test" or "after the test". */
  readonly when: string;
}

/** Returns whether a note of the weather is dated before the recorded start, so that it is not about the test. */
export function isBeforeTest({ visit }: Plan, { at }: WeatherNote): boolean {
  const [noted, start] = [msOf(at), msOf(recordedStart(visit))];
  return noted !== null && start !== null && noted < start;
}

/** Returns the weather notes in order of time, those without a time last. */
export function chronologicalWeather({ weather = [], visit, site }: Plan): readonly DatedWeatherNote[] {
  const [start, end] = [msOf(visit.start), msOf(visit.end)];
  const placed = weather.map((note, index) => {
    const at = msOf(note.at);
    if (at === null) return { note, index, at: Number.POSITIVE_INFINITY, when: 'Time not known' };
    const early = start !== null && at < start ? ', before the test' : '';
    const late = end !== null && at > end ? ', after the test' : '';
    return { note, index, at, when: `${formatInstant(at, site.timeZone)}${early}${late}` };
  });
  return placed.toSorted((a, b) => (a.at === b.at ? 0 : a.at - b.at)).map(({ at: _, ...rest }) => rest);
}
