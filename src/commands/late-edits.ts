import { PART_MISSING } from '../platform/part-missing.ts';
import type { CopyChoice } from '../state/copy-outline.ts';
import { useAppStore } from '../state/store.ts';

/** Edits whose code is loaded after the start. */
const LATE_EDITS = {
  /** Split, join and repair walls. */
  walls: () => import('../state/edit-walls.ts'),
  /** Align and distribute items. */
  lines: () => import('../../geometry/edit/align.ts'),
  /** Duplicate the selection. */
  copies: () => import('../state/duplicate-selection.ts'),
  /** Move a detector to the nearest clear spot. */
  nearest: () => import('../state/move-to-nearest.ts'),
  /** Copy walls of another level. */
  outline: () => import('../state/copy-outline.ts'),
  /** Lock the picture under a level. */
  tracing: () => import('../state/lock-tracing.ts'),
} as const;
type LateEdits = { readonly [Name in keyof typeof LATE_EDITS]: Awaited<ReturnType<(typeof LATE_EDITS)[Name]>> };

/** Loads all of them in advance. */
export const loadLateEdits = (): Promise<unknown> => Promise.all(Object.values(LATE_EDITS).map((load) => load()));

/** Calls `does` with the edits of `name`; shows a message if their code cannot be loaded. */
export function withLateEdits<Name extends keyof LateEdits>(name: Name, does: (edits: LateEdits[Name]) => void): void {
  const loading = LATE_EDITS[name]() as Promise<LateEdits[Name]>;
  loading.then(does, () => useAppStore.getState().say(PART_MISSING));
}

/** Copies walls of another level onto the one in view. */
export function copyLevelOutline(fromId: string, choice: CopyChoice): void {
  withLateEdits('outline', ({ copyOutline }) => copyOutline(useAppStore.getState(), fromId, choice));
}
