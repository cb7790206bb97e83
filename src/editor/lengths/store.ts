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
      /** The end that moves by default; left out for the usual one. */
      readonly moves?: DimensionMoves;
    }
  /** From the edge of a thing to the nearer wall, along x (0) or y (1) of the page. */
  | { readonly of: 'gap'; readonly id: string; readonly axis: 0 | 1 }
  /** A measure of a thing or an opening itself. */
  | { readonly of: 'size'; readonly id: string; readonly part: SizePart };
export type SizePart = 'across' | 'width' | 'depth' | 'bottom' | 'top';

/** Returns the length at the time it is reached, since an earlier correction may have changed it; null if it does not exist. */
export type LengthStep = () => LengthSubject | null;

export interface OpenLength {
  readonly subject: LengthSubject;
  /** Whether the field has the keyboard focus; until then it waits for a first digit. */
  readonly typing: boolean;
  /** The text that the field starts with; null for the present length. */
  readonly first: string | null;
  /** The end that moves; null for the default one. */
  readonly moves: DimensionMoves | null;
  /** Lengths that are taped together, and the index of this one. */
  readonly run: readonly LengthStep[];
  readonly at: number;
  /** Enter steps through the first `asked` of them; the others are reached by Tab. */
  readonly asked: number;
}

interface Lengths {
  readonly open: OpenLength | null;
  /** The length that was open last: Tab continues from it. */
  readonly left: LengthSubject | null;
  /** The figure under the pointer. */
  readonly highlighted: LengthSubject | null;
  /**
   * Whether the last length that was asked for by touch was typed: only then does the next field open by itself, with the keyboard on the
   * screen, which would else cover half the sheet after each tap.
   */
  readonly fingerTypes: boolean;
}

/** The length on the sheet that is pressed or waits to be typed. Not part of the plan or of the history. */
export const useLengths = create<Lengths>()(() => ({
  open: null,
  left: null,
  highlighted: null,
  fingerTypes: false,
}));

/** Opens a field for one length; with `typing` it has the keyboard focus at once. A reading of the laser tape is put into it. */
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

/** Waits for the lengths that position what was just placed: a digit begins the first, Enter continues with the next. */
export function askLengths({ run, asked }: Pick<OpenLength, 'run' | 'asked'>): void {
  const at = run.findIndex((step) => step() !== null);
  const subject = run[at]?.() ?? null;
  const typing = useLengths.getState().fingerTypes && useSketch.getState().touch;
  useLengths.setState({ open: subject && { subject, typing, first: null, moves: null, run, at, asked } });
}

/** Opens the next (1) or previous (-1) length of those that are taped together. Returns whether there is one. */
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
