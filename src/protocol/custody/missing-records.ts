import { listed } from '../../../geometry/messages/index.ts';
import type { Plan } from '../../../geometry/plan/model.ts';
import type { LogEntry } from '../../../geometry/plan/test-record.ts';
import { describeDuplicateSerial, namedDetectors } from './detectors.ts';
import { isSentToLaboratory, logEntryOf } from './log-entries.ts';

/** Returns a sentence for each detector with a serial number that occurs twice. */
export function duplicateSerials(plan: Plan): readonly string[] {
  return namedDetectors(plan).flatMap(({ id, name }) => {
    const twice = describeDuplicateSerial(plan, id);
    return twice ? [`${name}: ${twice}`] : [];
  });
}

/** Returns a sentence for each missing record of the log, with the detectors that lack it, and for each serial number that occurs twice. */
export function missingRecords(plan: Plan): readonly string[] {
  const { end, posted, received } = plan.visit;
  const fetched = end !== null;
  const sends = isSentToLaboratory(plan);
  const sent = Boolean(posted ?? received);
  const gap = (lacks: (entry: LogEntry) => boolean, words: (names: string, one: boolean) => string): string => {
    const names = namedDetectors(plan).flatMap(({ id, name }) => (lacks(logEntryOf(plan, id)) ? [name] : []));
    return names.length === 0 ? '' : words(fewNames(names), names.length === 1);
  };
  return [
    gap(
      ({ serial }) => !serial.trim(),
      (names, one) => `${names} ${one ? 'has' : 'have'} no serial number yet.`,
    ),
    ...duplicateSerials(plan),
    gap(
      ({ placedBy }) => !placedBy.trim(),
      (names) => `Who placed ${names} is not recorded.`,
    ),
    gap(
      ({ fetchedBy }) => fetched && !fetchedBy.trim(),
      (names) => `Who picked up ${names} is not recorded.`,
    ),
    gap(
      ({ sealed }) => fetched && sends && !sealed,
      (names, one) => `When ${names} ${one ? 'was' : 'were'} sealed is not recorded.`,
    ),
    gap(
      ({ tampering }) => fetched && tampering === 'unknown',
      (names) => `Whether there is evidence of tampering at ${names} is not recorded.`,
    ),
    gap(
      ({ custody }) => fetched && sends && !sent && custody.length === 0,
      (names) => `The chain of custody of ${names} to the laboratory is not recorded.`,
    ),
  ].filter(Boolean);
}

/** Of more detectors than this, the first `NAMED_OF_MANY` are named and the others counted. */
const MOST_NAMED = 6;
const NAMED_OF_MANY = 4;

/** Returns "A1 and A2", or "A1, A2, B1, B2 and 3 more". */
export function fewNames(names: readonly string[]): string {
  if (names.length <= MOST_NAMED) return listed(names);
  return listed([...names.slice(0, NAMED_OF_MANY), `${names.length - NAMED_OF_MANY} more`]);
}
