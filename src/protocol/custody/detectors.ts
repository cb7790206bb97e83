import { capital, counted, listed } from '../../../geometry/messages/index.ts';
import type { Plan } from '../../../geometry/plan/model.ts';
import { detectorLabel } from '../detector-label.ts';
import { logEntryOf } from './log-entries.ts';

/** A detector by the name that the log calls it. */
export interface NamedDetector {
  readonly id: string;
  readonly name: string;
}

/** Every detector of the plan, level by level. A label that stands on two levels has its level beside it; one without a label goes by its id. */
export function namedDetectors({ levels }: Plan): readonly NamedDetector[] {
  const all = levels.flatMap((level) =>
    level.detectors.map((each) => ({ id: each.id, label: detectorLabel(each), level: level.name.trim() || level.id })),
  );
  return all.map(({ id, label, level }) => {
    const alone = all.every((other) => other.id === id || other.label !== label);
    return { id, name: alone ? label : `${label} (${level})` };
  });
}

/** Blanks, upper and lower case are the scanner's and not the label's. */
const normalizeSerial = (serial: string): string => serial.trim().replaceAll(/\s+/g, '').toUpperCase();

/**
 * What else in the plan has the serial number of a detector, in words: other detectors, blanks and spikes. Empty where it has
 * none yet, or where nothing else has it.
 */
export function describeDuplicateSerial(plan: Plan, detector: string): string {
  const own = normalizeSerial(logEntryOf(plan, detector).serial);
  if (!own) return '';
  const others = namedDetectors(plan)
    .filter(({ id }) => id !== detector && normalizeSerial(logEntryOf(plan, id).serial) === own)
    .map(({ name }) => name);
  const checks = (plan.quality ?? [])
    .filter(({ serial }) => normalizeSerial(serial) === own)
    .map(({ kind }) => `a ${kind}`);
  const all = [...others, ...checks];
  if (all.length === 0) return '';
  return `${capital(listed(all))} ${all.length > 1 ? 'have' : 'has'} the same serial number. Look at the labels again.`;
}

/** Whether all of them are the same; so are none at all. */
export const allSame = (values: readonly unknown[]): boolean => values.every((value) => value === values[0]);

/** Several detectors in few words: "All 4", "A1 and A2". */
export function listDetectors(some: readonly NamedDetector[], all: readonly NamedDetector[]): string {
  if (some.length === all.length && all.length > 2) return `All ${counted(all.length, 'detector')}`;
  return listed(some.map(({ name }) => name));
}

/** The names that are in the log already, to be picked instead of typed: each once, in the order of the log. */
export function namesInLog({ log = [] }: Plan): readonly string[] {
  const names = log.flatMap(({ placedBy, fetchedBy, custody }) => [
    placedBy,
    fetchedBy,
    ...custody.flatMap(({ from, to }) => [from, to]),
  ]);
  return [...new Set(names.map((name) => name.trim()).filter(Boolean))];
}
