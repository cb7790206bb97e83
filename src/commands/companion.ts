import { askForThing } from '../editor/lengths/set-out.ts';
import { setCompanion } from '../state/pairs.ts';
import { useAppStore } from '../state/store.ts';

/** Sets detectors beside one, and waits for the lengths that position a single one. */
export function addCompanion(detectorId: string, more = 1): void {
  if (setCompanion(detectorId, more) || more > 1) return;
  const [id] = useAppStore.getState().selection;
  if (id && id !== detectorId) askForThing(id);
}
