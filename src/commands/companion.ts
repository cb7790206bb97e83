import { askForThing } from '../editor/lengths/set-out.ts';
import { setCompanion } from '../state/pairs.ts';
import { useAppStore } from '../state/store.ts';

/** Places `more` detectors beside a detector. For a single one, asks for the lengths that position it. */
export function addCompanion(detectorId: string, more = 1): void {
  if (setCompanion(detectorId, more) || more > 1) return;
  const [id] = useAppStore.getState().selection;
  if (id && id !== detectorId) askForThing(id);
}
