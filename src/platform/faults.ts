import { create } from 'zustand';

/** Faults of Stillspot itself that were caught, for the page to show. */
interface Faults {
  /** Draws the sheet again; null unless drawing it failed. */
  readonly drawAgain: (() => void) | null;
  /** The last other fault, in the words of the error or of `PART_MISSING`; empty for none. */
  readonly other: string;
}

export const useFaults = create<Faults>()(() => ({ drawAgain: null, other: '' }));

/** Shows uncaught errors of event handlers and timers, and unhandled promise rejections. */
export function watchForFaults(): void {
  addEventListener('error', ({ error }) => show(error));
  addEventListener('unhandledrejection', ({ reason }) => show(reason));
}

/** Ignores values that are no `Error`: they come from the browser or from extensions. */
function show(error: unknown): void {
  if (error instanceof Error && error.name !== 'AbortError') useFaults.setState({ other: error.message });
}
