import { create } from 'zustand';
import type { TapeText, TapeUnit } from './tape-text.ts';

/** The longest time between two keys of a burst, ms. Tapes take 1 to 30, hands over 50: common practice, no published source. */
export const BURST_GAP_MS = 40;

interface TapeState {
  /** The unit of the tape's bare numbers; null if the user has not chosen it. */
  readonly unit: TapeUnit | null;
  /** The text that the tape typed while no length was asked for, or while its unit was not known. */
  readonly reading: TapeText | null;
  /** The longest time between two keys of the tape, ms. */
  readonly gap: number;
  /** Whether keys of the tape are handled; their code is loaded after the start. */
  readonly ready: boolean;
}

/** The laser tape that types. Its unit is stored in this browser, not in the plan. */
export const useTape = create<TapeState>()(() => ({ unit: null, reading: null, gap: BURST_GAP_MS, ready: false }));

/** Returns the reading for a length that was opened, and clears it; null if there is none. */
export function takeReading(): string | null {
  const { reading } = useTape.getState();
  if (reading?.kind !== 'length') return null;
  dropReading();
  return reading.text;
}

export function dropReading(): void {
  useTape.setState({ reading: null });
}
