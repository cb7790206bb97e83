import { create } from 'zustand';
import type { RunningDimension } from '../../../geometry/dimension/running-dimensions.ts';
import type { DimensionMoves } from '../../../geometry/edit/dimension-edit.ts';
import { useSketch } from '../overlay/sketch.ts';
import { takeReading } from '../tape/tape-store.ts';

/** A length of the plan that can be typed. */
export type LengthSubject =
  /** Along a face of a room. */
  | {
      readonly of: 'face';
      readonly dimension: RunningDimension;
      /** The end that gives way if nobody says otherwise; left out for the usual one. */
      readonly moves?: DimensionMoves;
    }
  /** From the edge of a thing to the nearer wall: along x (0) or y (1) of the page. */
  | { readonly of: 'gap'; readonly id: string; readonly axis: 0 | 1 }
  /** A measure of a thing or an opening itself. */
  | { readonly of: 'size'; readonly id: string; readonly part: SizePart };
export type SizePart = 'across' | 'width' | 'depth' | 'bottom' | 'top';

/** Returns the next length when it is reached: a room has another depth once its width is corrected. */
export type LengthStep = () => LengthSubject | null;

export interface OpenLength {
  readonly subject: LengthSubject;
  /** Whether the keys go into the field; until then it waits for a first digit. */
  readonly typing: boolean;
  /** What the field begins with; null for the length as it is. */
  readonly first: string | null;
  /** Which end gives way; null for the one that does if nobody says otherwise. */
  readonly moves: DimensionMoves | null;
  /** Lengths that are taped together, and which of them this is. */
  readonly run: readonly LengthStep[];
  readonly at: number;
  /** Enter goes through the first `asked` of them; the others are reached by Tab. */
  readonly asked: number;
}

interface Lengths {
  readonly open: OpenLength | null;
  /** The one that was open last: Tab goes on from there. */
  readonly left: LengthSubject | null;
  /** The figure under the pointer. */
  readonly highlighted: LengthSubject | null;
  /**
   * Whether a finger typed the last length that it was asked for: then the next field opens by itself, with the keys on the screen. Else
   * they would cover half the sheet after each tap.
   */
  readonly fingerTypes: boolean;
}

/** The length on the sheet that is pressed or waits to be typed. Never in the plan, never in the history. */
export const useLengths = create<Lengths>()(() => ({
  open: null,
  left: null,
  highlighted: null,
  fingerTypes: false,
}));

/** A field for one length; `typing` puts the keys into it at once. What a laser tape has typed goes into it. */
export function openLength(
  subject: LengthSubject,
  typing: boolean,
  together: Pick<OpenLength, 'run' | 'at' | 'asked'> = { run: [() => subject], at: 0, asked: 1 },
): void {
  const first = takeReading();
  useLengths.setState({
    open: { subject, typing: typing || first !== null, first, moves: null, ...together },
  });
}

/** Waits for the lengths that set out what was just put down: a digit begins the first, Enter goes on to the next. */
export function askLengths({ run, asked }: Pick<OpenLength, 'run' | 'asked'>): void {
  const at = run.findIndex((step) => step() !== null);
  const subject = run[at]?.() ?? null;
  const typing = useLengths.getState().fingerTypes && useSketch.getState().touch;
  useLengths.setState({ open: subject && { subject, typing, first: null, moves: null, run, at, asked } });
}

/** On to another length of those that are taped together. Returns whether there is one. */
export function stepLength(by: 1 | -1): boolean {
  const { open } = useLengths.getState();
  if (!open) return false;
  for (let at = open.at + by; at >= 0 && at < open.run.length; at += by) {
    const subject = open.run[at]?.() ?? null;
    if (!subject) continue;
    useLengths.setState({ open: { ...open, subject, at, typing: true, first: null, moves: null } });
    return true;
  }
  return false;
}

export function closeLength(): void {
  const { open } = useLengths.getState();
  if (open) useLengths.setState({ open: null, left: open.subject });
}
