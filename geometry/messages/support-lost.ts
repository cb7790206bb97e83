import type { Detector } from '../plan/model.ts';
import { listed } from '../plan/nouns.ts';

/** Returns the message that nothing supports some detectors any more, and what to do; "" for none. */
export function describeSupportLost(detectors: readonly Pick<Detector, 'label'>[]): string {
  if (detectors.length === 0) return '';
  const names = listed(detectors.map(({ label }) => label.trim() || 'the detector'));
  const one = detectors.length === 1;
  return `Nothing carries ${names} now. Place ${one ? 'it' : 'them'} on a piece of furniture, or enter that ${one ? 'it hangs or has its own stand' : 'they hang or have their own stands'}.`;
}
