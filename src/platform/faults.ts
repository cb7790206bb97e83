import { create } from 'zustand';

/** Faults of Stillspot itself that were caught, for the page to show. */
interface Faults {
  /** Set while the sheet could not be drawn; draws it again. */
  readonly drawAgain: (() => void) | null;
  /** What else went wrong last, in the words of the error or of `PART_MISSING`; empty for nothing. */
  readonly other: string;
}

export const useFaults = create<Faults>()(() => ({ drawAgain: null, other: '' }));

/** Shows what nobody caught: errors of event handlers and timers, promises that nobody waited for. */
export function watchForFaults(): void {
  addEventListener('error', ({ error }) => show(error));
  addEventListener('unhandledrejection', ({ reason }) => show(reason));
}

/** What is no error object comes from elsewhere: notices of the browser, extensions. */
function show(error: unknown): void {
  if (error instanceof Error && error.name !== 'AbortError') useFaults.setState({ other: error.message });
}
