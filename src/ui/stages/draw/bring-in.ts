import { PART_MISSING } from '../../../platform/part-missing.ts';
import { useAppStore } from '../../../state/store.ts';

/** Reads a picture and puts it under the level. The code is loaded on demand; shows a message if it cannot be loaded. */
export async function bringIn(file: File): Promise<void> {
  const actions = await import('./tracing-actions.ts').catch(() => null);
  if (actions) await actions.layUnder(file);
  else useAppStore.getState().say(PART_MISSING);
}
