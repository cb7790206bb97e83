import { PART_MISSING } from '../platform/part-missing.ts';
import type { CopyChoice } from '../state/copy-outline.ts';
import { useAppStore } from '../state/store.ts';

/** Edits whose code comes after the start. */
const LATE_EDITS = {
  /** They split, join and mend walls. */
  walls: () => import('../state/edit-walls.ts'),
  /** They align and distribute. */
  lines: () => import('../../geometry/edit/align.ts'),
  /** They copy what is selected. */
  copies: () => import('../state/duplicate-selection.ts'),
  /** They move a detector to the nearest clear spot. */
  nearest: () => import('../state/move-to-nearest.ts'),
  /** They copy walls of another level. */
  outline: () => import('../state/copy-outline.ts'),
  /** They lock the picture under a level. */
  tracing: () => import('../state/lock-tracing.ts'),
} as const;
type LateEdits = { readonly [Name in keyof typeof LATE_EDITS]: Awaited<ReturnType<(typeof LATE_EDITS)[Name]>> };

/** Loads all of them, so that they are there when they are asked for. */
export const loadLateEdits = (): Promise<unknown> => Promise.all(Object.values(LATE_EDITS).map((load) => load()));

/** Calls `does` with some of these edits; shows a message where their code cannot be loaded. */
export function withLateEdits<Name extends keyof LateEdits>(name: Name, does: (edits: LateEdits[Name]) => void): void {
  const loading = LATE_EDITS[name]() as Promise<LateEdits[Name]>;
  loading.then(does, () => useAppStore.getState().say(PART_MISSING));
}

/** Copies walls of another level onto the one in view. */
export function copyLevelOutline(fromId: string, choice: CopyChoice): void {
  withLateEdits('outline', ({ copyOutline }) => copyOutline(useAppStore.getState(), fromId, choice));
}
