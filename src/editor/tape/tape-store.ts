import { create } from 'zustand';
import type { TapeText, TapeUnit } from './tape-text.ts';

/** The longest time between two keys of a burst, ms. Tapes take 1 to 30, hands over 50: common practice, no published source. */
export const BURST_GAP_MS = 40;

interface TapeState {
  /** The unit of the tape's bare numbers; null where nobody has said so. */
  readonly unit: TapeUnit | null;
  /** What the tape typed while nothing asked for a length, or while its unit was not known. */
  readonly reading: TapeText | null;
  /** The longest time between two of its keys, ms. */
  readonly gap: number;
  /** Whether its keys are listened to: their code comes after the start. */
  readonly ready: boolean;
}

/** The laser tape that types. Its unit stays in this browser, never in the plan. */
export const useTape = create<TapeState>()(() => ({ unit: null, reading: null, gap: BURST_GAP_MS, ready: false }));

/** Hands the reading to a length that was opened for it. Null where there is none. */
export function takeReading(): string | null {
  const { reading } = useTape.getState();
  if (reading?.kind !== 'length') return null;
  dropReading();
  return reading.text;
}

export function dropReading(): void {
  useTape.setState({ reading: null });
}
