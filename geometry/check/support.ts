import type { Detector, Level } from '../plan/model.ts';
import type { EffectiveRule } from '../rules/profiles.ts';
import { carries } from './carriers.ts';
import { wordCheck } from './measure.ts';
import type { Check } from './types.ts';

/**
 * What carries a detector: an object that is drawn, else what the detector says of itself. Where neither does the rule stands as
 * not run: the drawing cannot tell whether a hook was forgotten or the thing floats.
 */
export function checkSupport(level: Level, detector: Detector, rule: EffectiveRule): Check[] {
  const carrier = level.objects.find((object) => carries(object, detector));
  if (carrier) return [{ ...wordCheck(rule, 'clear', 'Its whole foot stands on it.'), subject: carrier.id }];
  if (detector.support === 'hung') return [wordCheck(rule, 'clear', 'It hangs.')];
  if (detector.support === 'stand') return [wordCheck(rule, 'clear', 'It stands on a stand of its own.')];
  const reason = 'Nothing drawn carries it, and it is not said whether it hangs or has a stand of its own.';
  return [wordCheck(rule, 'unknown', reason, true)];
}
