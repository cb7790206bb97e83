import { PART_MISSING } from '../../../platform/part-missing.ts';
import { useAppStore } from '../../../state/store.ts';

/** Reads a picture and lays it under the level. Its code is loaded when it is asked for; a message says so where it cannot be. */
export async function bringIn(file: File): Promise<void> {
  const actions = await import('./tracing-actions.ts').catch(() => null);
  if (actions) await actions.layUnder(file);
  else useAppStore.getState().say(PART_MISSING);
}
