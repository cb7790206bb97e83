import type { Agreement, Custody, LogEntry, Plan, WeatherNote } from '../../../geometry/plan/model.ts';

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

/** The log of one detector; a blank one where nothing is written yet. */
export function logOf({ log = [] }: Plan, detector: string): LogEntry {
  return log.find((entry) => entry.detector === detector) ?? { detector, ...BLANK };
}

/** The plan with some of a detector's log changed. */
export function withLog(plan: Plan, detector: string, change: Partial<LogEntry>): Plan {
  const { log = [] } = plan;
  const entry = { ...logOf(plan, detector), ...change };
  const known = log.some((each) => each.detector === detector);
  return {
    ...plan,
    log: known ? log.map((each) => (each.detector === detector ? entry : each)) : [...log, entry],
  };
}

/** The plan with a hand-over added to a detector's log. */
export function withHandOver(plan: Plan, detector: string, step: Custody): Plan {
  return withLog(plan, detector, { custody: [...logOf(plan, detector).custody, step] });
}

export function withWeather(plan: Plan, note: WeatherNote): Plan {
  return { ...plan, weather: [...(plan.weather ?? []), note] };
}

/** The plan without the weather note at a place of the list; the last one gone leaves no list. */
export function withoutWeather(plan: Plan, index: number): Plan {
  const { weather = [], ...rest } = plan;
  const kept = weather.filter((_, i) => i !== index);
  return kept.length > 0 ? { ...rest, weather: kept } : rest;
}

const UNSIGNED: Agreement = { signedBy: '', at: null, refused: false, note: '' };

export const agreementOf = ({ agreement = UNSIGNED }: Plan): Agreement => agreement;

export function withAgreement(plan: Plan, change: Partial<Agreement>): Plan {
  return { ...plan, agreement: { ...agreementOf(plan), ...change } };
}

/** What the records of a job still lack, in sentences, the first to be mended first; empty for nothing. */
export function logGaps(plan: Plan): readonly string[] {
  const fetched = plan.visit.end !== null;
  return plan.levels
    .flatMap(({ detectors }) => detectors)
    .flatMap(({ id, label }) => {
      const { serial, placedBy, fetchedBy, sealed, tampering, custody } = logOf(plan, id);
      const name = label.trim() || id;
      return [
        serial.trim() ? '' : `${name} has no serial number yet.`,
        placedBy.trim() ? '' : `Who set out ${name} is not written down.`,
        !fetched || fetchedBy.trim() ? '' : `Who fetched ${name} is not written down.`,
        !fetched || sealed ? '' : `When ${name} was sealed is not written down.`,
        !fetched || tampering !== 'unknown' ? '' : `Whether somebody was at ${name} is not written down.`,
        !fetched || custody.length > 0 ? '' : `Whose hands ${name} went through to the laboratory is not written down.`,
      ].filter(Boolean);
    });
}
