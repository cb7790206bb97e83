import { supports, unmeasuredCarrier } from '../../geometry/check/support.ts';
import { subjectName } from '../../geometry/messages/subject.ts';
import type { Detector, Level } from '../../geometry/plan/model.ts';
import { TYPE_MM } from './style.ts';
import { shortened } from './text.ts';

/** Width beyond which the name of a carrier is shortened, mm in body type. */
const LONGEST = 40;

/**
 * Returns ", on the table", ", hung" or ", on its own stand", with "(height not measured)" where the height of the carrier is not measured.
 * Empty if the carrier of the detector is not known.
 */
export function carrierWords(level: Level, detector: Detector): string {
  const carrier = level.objects.find((object) => supports(object, detector));
  if (carrier) {
    const open = unmeasuredCarrier(level, detector) ? ' (height not measured)' : '';
    return `, on ${shortened(subjectName(level, carrier.id), LONGEST, { size: TYPE_MM.body })}${open}`;
  }
  if (detector.support === 'hung') return ', hung';
  return detector.support === 'stand' ? ', on its own stand' : '';
}
