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

/** Whether detectors of this visit are sealed and sent to a laboratory; a continuous monitor is read on site. */
export const isSentToLaboratory = ({ visit }: Plan): boolean => visit.device !== 'monitor';

/** Returns the log entry of one detector; a blank one where there is none. */
export function logEntryOf({ log = [] }: Plan, detector: string): LogEntry {
  return log.find((entry) => entry.detector === detector) ?? { detector, ...BLANK };
}

/** Returns the plan with a detector's log entry changed. */
export function withLogEntry(plan: Plan, detector: string, change: Partial<LogEntry>): Plan {
  const { log = [] } = plan;
  const entry = { ...logEntryOf(plan, detector), ...change };
  const known = log.some((each) => each.detector === detector);
  return {
    ...plan,
    log: known ? log.map((each) => (each.detector === detector ? entry : each)) : [...log, entry],
  };
}

/** Returns the plan with a hand-over added to a detector's log entry. */
export function withHandOver(plan: Plan, detector: string, step: Custody): Plan {
  return withLogEntry(plan, detector, { custody: [...logEntryOf(plan, detector).custody, step] });
}

/** Returns the plan with the same change in the log entries of several detectors. */
export function withLogEntries(
  plan: Plan,
  detectors: readonly string[],
  change: Partial<Omit<LogEntry, 'detector'>>,
): Plan {
  return detectors.reduce((now, detector) => withLogEntry(now, detector, change), plan);
}

/** Returns the plan with a weather note added. */
export function withWeatherNote(plan: Plan, note: WeatherNote): Plan {
  return { ...plan, weather: [...(plan.weather ?? []), note] };
}

/** Returns the plan without the weather note at an index; without its last note the plan has no list. */
export function withoutWeatherNote(plan: Plan, index: number): Plan {
  const { weather = [], ...rest } = plan;
  const kept = weather.filter((_, i) => i !== index);
  return kept.length > 0 ? { ...rest, weather: kept } : rest;
}
