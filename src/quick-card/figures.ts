import type { XY } from '../../geometry/plan/model.ts';
import { CAP_HEIGHT } from '../drawing/text.ts';
import type { Area } from '../report/paper.ts';
import { COLOR } from '../report/style.ts';
import { type TextStyle, textWidth } from '../report/text.ts';

/** The figures of the tapes on the sketch of a card, mm of paper. */

/** Type size of the figures: on a card they are read at arm's length. */
export const FIGURE = 3.7;
export const FIGURES: TextStyle = { size: FIGURE, weight: 'bold', anchor: 'middle', halo: true, color: COLOR.accent };
export const CAP = FIGURE * CAP_HEIGHT;
/** Radius of the symbol of a detector. */
export const SPOT = 2.6;

/** Free paper around a figure: more than its halo, which would hide the line beside it. */
const PAD = 1;
/** Number of places to try, in steps of a third of the type size to either side, nearest to the middle of the line first. */
const STEPS = 36;
const OFFSETS = offsets();

export interface Tape {
  readonly line: readonly [XY, XY];
  readonly length: string;
}
export interface PlacedFigure {
  readonly text: string;
  /** Middle of the figure. */
  readonly x: number;
  readonly y: number;
}

/**
 * Returns the place of each figure: near the middle of its line, clear of every line, symbol, thing and other figure; on its line if no
 * area has room.
 * @param areas of the paper; the first with room is used
 */
export function placeFigures(
  tapes: readonly Tape[],
  spots: readonly XY[],
  areas: readonly Area[],
  things: readonly Box[] = [],
): readonly PlacedFigure[] {
  const taken: Box[] = [
    ...things,
    ...spots.map((at) => boxAbout(at, 2 * SPOT, 2 * SPOT)),
    ...tapes.map(({ line: [a, b] }) => boxOf(a, b)),
  ];
  return tapes.map(({ line: [a, b], length }) => {
    const width = textWidth(length, FIGURES) + 2 * PAD;
    const middle: XY = [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2];
    const places = OFFSETS.map(([x, y]): XY => [middle[0] + x, middle[1] + y]);
    const free = places.filter((at) => {
      const box = boxAbout(at, width, CAP + 2 * PAD);
      return taken.every((other) => !overlap(box, other));
    });
    const inside = areas.map((area) => free.find((at) => isWithin(boxAbout(at, width, CAP + 2 * PAD), area)));
    const [x, y] = inside.find((at) => at !== undefined) ?? middle;
    taken.push(boxAbout([x, y], width, CAP + 2 * PAD));
    return { text: length, x, y };
  });
}

export interface Box {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

const boxAbout = ([x, y]: XY, width: number, height: number): Box => ({
  left: x - width / 2,
  top: y - height / 2,
  right: x + width / 2,
  bottom: y + height / 2,
});

export const boxOf = (a: XY, b: XY): Box => ({
  left: Math.min(a[0], b[0]),
  top: Math.min(a[1], b[1]),
  right: Math.max(a[0], b[0]),
  bottom: Math.max(a[1], b[1]),
});

const overlap = (a: Box, b: Box): boolean =>
  a.left < b.right && a.right > b.left && a.top < b.bottom && a.bottom > b.top;

const isWithin = ({ left, top, right, bottom }: Box, { x, y, width, height }: Area): boolean =>
  left >= x && top >= y && right <= x + width && bottom <= y + height;

function offsets(): readonly XY[] {
  const steps = Array.from({ length: 2 * STEPS + 1 }, (_, i) => ((i - STEPS) * FIGURE) / 3);
  const all = steps.flatMap((x) => steps.map((y): XY => [x, y]));
  return all.sort((a, b) => Math.hypot(...a) - Math.hypot(...b));
}
