import { capital, counted, listed } from '../../../geometry/messages/index.ts';
import type { Plan } from '../../../geometry/plan/model.ts';
import { detectorLabel } from '../detector-label.ts';
import { logEntryOf } from './log-entries.ts';

/** A detector with a name that is unique in the plan where possible. */
export interface NamedDetector {
  readonly id: string;
  readonly name: string;
}

/** Returns every detector of the plan, level by level, by label or id. A label that occurs twice has its level added. */
export function namedDetectors({ levels }: Plan): readonly NamedDetector[] {
  const all = levels.flatMap((level) =>
    level.detectors.map((each) => ({ id: each.id, label: detectorLabel(each), level: level.name.trim() || level.id })),
  );
  return all.map(({ id, label, level }) => {
    const alone = all.every((other) => other.id === id || other.label !== label);
    return { id, name: alone ? label : `${label} (${level})` };
  });
}

/** Spaces and letter case depend on the scanner: they are ignored. */
const normalizeSerial = (serial: string): string => serial.trim().replaceAll(/\s+/g, '').toUpperCase();

/**
 * Returns a sentence with the other detectors, blanks and spikes of the plan that have the serial number of a detector. Empty for none, or
 * if the detector has no serial number.
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
  return `${capital(listed(all))} ${all.length > 1 ? 'have' : 'has'} the same serial number. Check the labels again.`;
}

/** Returns a function that says whether several detectors, blanks or spikes of a plan have a serial number. */
export function repeatedSerials(plan: Plan): (serial: string) => boolean {
  const detectors = plan.levels.flatMap((level) => level.detectors.map(({ id }) => logEntryOf(plan, id)));
  const counts = new Map<string, number>();
  for (const { serial } of [...detectors, ...(plan.quality ?? [])]) {
    const known = normalizeSerial(serial);
    if (known) counts.set(known, (counts.get(known) ?? 0) + 1);
  }
  return (serial) => (counts.get(normalizeSerial(serial)) ?? 0) > 1;
}

/** Whether all values are the same; true for none. */
export const allSame = (values: readonly unknown[]): boolean => values.every((value) => value === values[0]);

/** Returns several detectors in few words: "All 4 detectors", "A1 and A2". */
export function listDetectors(some: readonly NamedDetector[], all: readonly NamedDetector[]): string {
  if (some.length === all.length && all.length > 2) return `All ${counted(all.length, 'detector')}`;
  return listed(some.map(({ name }) => name));
}

/** Returns the names of people and places in the log, for suggestions: each once, in the order of the log. */
export function namesInLog({ log = [] }: Plan): readonly string[] {
  const names = log.flatMap(({ placedBy, fetchedBy, custody }) => [
    placedBy,
    fetchedBy,
    ...custody.flatMap(({ from, to }) => [from, to]),
  ]);
  return [...new Set(names.map((name) => name.trim()).filter(Boolean))];
}
