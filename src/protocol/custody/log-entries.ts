import type { Plan } from '../../../geometry/plan/model.ts';
import type { Custody, LogEntry, WeatherNote } from '../../../geometry/plan/test-record.ts';

const BLANK: Omit<LogEntry, 'detector'> = {
  serial: '',
  placedBy: '',
  fetchedBy: '',
  sealed: null,
  tampering: 'unknown',
  note: '',
  photos: [],
  custody: [],
};

/** Whether detectors of this visit are sealed and sent away: a monitor is read on the spot. */
export const isSentToLaboratory = ({ visit }: Plan): boolean => visit.device !== 'monitor';

/** The log of one detector; a blank one where nothing is written yet. */
export function logEntryOf({ log = [] }: Plan, detector: string): LogEntry {
  return log.find((entry) => entry.detector === detector) ?? { detector, ...BLANK };
}

/** The plan with some of a detector's log changed. */
export function withLogEntry(plan: Plan, detector: string, change: Partial<LogEntry>): Plan {
  const { log = [] } = plan;
  const entry = { ...logEntryOf(plan, detector), ...change };
  const known = log.some((each) => each.detector === detector);
  return {
    ...plan,
    log: known ? log.map((each) => (each.detector === detector ? entry : each)) : [...log, entry],
  };
}

/** The plan with a hand-over added to a detector's log. */
export function withHandOver(plan: Plan, detector: string, step: Custody): Plan {
  return withLogEntry(plan, detector, { custody: [...logEntryOf(plan, detector).custody, step] });
}

/** The plan with the same written into the log of several detectors. What each has besides stays as it is. */
export function withLogEntries(
  plan: Plan,
  detectors: readonly string[],
  change: Partial<Omit<LogEntry, 'detector'>>,
): Plan {
  return detectors.reduce((now, detector) => withLogEntry(now, detector, change), plan);
}

export function withWeatherNote(plan: Plan, note: WeatherNote): Plan {
  return { ...plan, weather: [...(plan.weather ?? []), note] };
}

/** The plan without the weather note at a place of the list; the last one gone leaves no list. */
export function withoutWeatherNote(plan: Plan, index: number): Plan {
  const { weather = [], ...rest } = plan;
  const kept = weather.filter((_, i) => i !== index);
  return kept.length > 0 ? { ...rest, weather: kept } : rest;
}
