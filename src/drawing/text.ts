import type { XY } from '../../geometry/plan/model.ts';
import type { Shape } from './display-list.ts';
import type { ColorRole } from './inks.ts';

/** A line of text, placed by its middle: half the height of capitals above the baseline. Lengths are plan mm or screen px. */
export interface Text {
  readonly text: string;
  readonly at: XY;
  /** Degrees, clockwise. */
  readonly turn: number;
  readonly style: TextStyle;
}

export interface TextStyle {
  readonly size: number;
  readonly bold?: boolean;
  readonly color: ColorRole;
  /** Color of the outline around the letters, which keeps them legible on a hatch. */
  readonly halo?: ColorRole;
}

/** Something drawn, with its words over it. */
export interface Drawn {
  readonly shapes: readonly Shape[];
  readonly texts: readonly Text[];
}

export function textAt(text: string, at: XY, style: TextStyle, turn = 0): Text {
  return { text, at, turn, style };
}

/** Returns the width of a text in the units of its size. */
export type MeasureText = (text: string, style: Pick<TextStyle, 'size' | 'bold'>) => number;

/** Height of capitals and depth of descenders as shares of the type size: Atkinson Hyperlegible Next, table OS/2. */
export const CAP_HEIGHT = 0.668;
export const DESCENT = 0.22;
/** From one line of text to the next, as a share of the type size. */
export const LEADING = 1.28;

/** Returns the text, or as much of its beginning as fits with "…" after it. For texts that are shown in full elsewhere. */
export function shortened(text: string, width: number, measure: (text: string) => number): string {
  if (measure(text) <= width) return text;
  const characters = [...text];
  // A very long text is cut first, so that few measurements are needed.
  characters.length = Math.min(characters.length, 200);
  while (characters.length > 0 && measure(`${characters.join('')}…`) > width) characters.pop();
  return `${characters.join('').trimEnd()}…`;
}
