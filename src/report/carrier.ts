import { supports, unmeasuredCarrier } from '../../geometry/check/support.ts';
import { subjectName } from '../../geometry/messages/subject.ts';
import type { Detector, Level } from '../../geometry/plan/model.ts';
import { TYPE_MM } from './style.ts';
import { shortened } from './text.ts';

/** A longer name of what carries a detector is shortened, mm of body type. */
const LONGEST = 40;

/**
 * Returns ", on the table", ", hung" or ", on its own stand", and where nobody has measured how high the table is; empty where it is not known
 * what carries the detector.
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
