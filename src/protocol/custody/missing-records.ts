import type { Plan } from '../../../geometry/plan/model.ts';
import { describeDuplicateSerial, namedDetectors } from './detectors.ts';
import { isSentToLaboratory, logEntryOf } from './log-entries.ts';

/** Returns a sentence for each detector with a serial number that occurs twice. */
export function duplicateSerials(plan: Plan): readonly string[] {
  return namedDetectors(plan).flatMap(({ id, name }) => {
    const twice = describeDuplicateSerial(plan, id);
    return twice ? [`${name}: ${twice}`] : [];
  });
}

/** Returns sentences on what the log entries of a plan lack or have twice, by detector. */
export function missingRecords(plan: Plan): readonly string[] {
  const { end, posted, received } = plan.visit;
  const fetched = end !== null;
  const sends = isSentToLaboratory(plan);
  const sent = Boolean(posted ?? received);
  return namedDetectors(plan).flatMap(({ id, name }) => {
    const { serial, placedBy, fetchedBy, sealed, tampering, custody } = logEntryOf(plan, id);
    const twice = describeDuplicateSerial(plan, id);
    return [
      serial.trim() ? '' : `${name} has no serial number yet.`,
      twice && `${name}: ${twice}`,
      placedBy.trim() ? '' : `Who placed ${name} is not recorded.`,
      !fetched || fetchedBy.trim() ? '' : `Who picked up ${name} is not recorded.`,
      !fetched || !sends || sealed ? '' : `When ${name} was sealed is not recorded.`,
      !fetched || tampering !== 'unknown' ? '' : `Whether there is evidence of tampering at ${name} is not recorded.`,
      !fetched || !sends || sent || custody.length > 0
        ? ''
        : `The chain of custody of ${name} to the laboratory is not recorded.`,
    ].filter(Boolean);
  });
}
