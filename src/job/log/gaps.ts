import type { Plan } from '../../../geometry/plan/model.ts';
import { namedDetectors, sameSerial } from './detectors.ts';
import { logOf } from './edit.ts';

/** What the records of a job still lack, or have twice, in sentences, the first to be mended first; empty for nothing. */
export function logGaps(plan: Plan): readonly string[] {
  const { end, posted, received, device } = plan.visit;
  const fetched = end !== null;
  // A monitor is read on the spot: nothing is sealed and nothing sent.
  const sends = device !== 'monitor';
  const sent = Boolean(posted ?? received);
  return namedDetectors(plan).flatMap(({ id, name }) => {
    const { serial, placedBy, fetchedBy, sealed, tampering, custody } = logOf(plan, id);
    const twice = sameSerial(plan, id);
    return [
      serial.trim() ? '' : `${name} has no serial number yet.`,
      twice && `${name}: ${twice}`,
      placedBy.trim() ? '' : `Who set out ${name} is not written down.`,
      !fetched || fetchedBy.trim() ? '' : `Who fetched ${name} is not written down.`,
      !fetched || !sends || sealed ? '' : `When ${name} was sealed is not written down.`,
      !fetched || tampering !== 'unknown' ? '' : `Whether somebody was at ${name} is not written down.`,
      !fetched || !sends || sent || custody.length > 0
        ? ''
        : `Whose hands ${name} went through to the laboratory is not written down.`,
    ].filter(Boolean);
  });
}
