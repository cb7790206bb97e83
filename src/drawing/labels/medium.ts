import type { Mm, XY } from '../../../geometry/plan/model.ts';
import type { Shape } from '../display-list.ts';
import type { MeasureText, Text } from '../text.ts';
import type { Area, Slot } from './placer.ts';

/** What labels are laid out for: a screen at one scale, or a sheet of paper. Lengths are in its unit, px or mm of paper, from the plan's origin. */
export interface LabelMedium {
  /** Units for a millimeter of the house. */
  readonly scale: number;
  readonly measure: MeasureText;
  readonly type: { readonly fine: number; readonly small: number; readonly tag: number; readonly name: number };
  /** Nothing is placed beyond it; null for no bound. */
  readonly area: Area | null;
  /** The house is drawn so small that rooms are named in small type, and things not at all. */
  readonly isSmall: boolean;
  /** Whether a room's label has the sizes of the room too. */
  readonly roomSizes: boolean;
  /** From an outside wall, from a face inside, and from one line of dimensions to the next; a figure's least target. */
  readonly dimensions: {
    readonly outside: number;
    readonly inside: number;
    readonly step: number;
    readonly target: number;
  };
  /** Radius of the least symbol of a detector. */
  readonly symbol: number;
}

/** Something written, with the lines that belong to it. */
export interface Label {
  readonly texts: readonly Text[];
  /** In units of the medium, as the texts: leaders, lines of dimensions. */
  readonly shapes: readonly Shape[];
  /** The ground that its letters take. */
  readonly slots: readonly Slot[];
}

export function toUnits({ scale }: LabelMedium, [x, y]: XY): XY {
  return [x * scale, y * scale];
}

export function unitsOf({ scale }: LabelMedium, length: Mm): number {
  return length * scale;
}
