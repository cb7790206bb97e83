/** Dimension lines outside the walls: the clear widths of the rooms in chains, and the whole beyond them. */

import type { LevelModel, Room } from '../../geometry/level/types.ts';
import type { XY } from '../../geometry/plan/model.ts';
import { type Extent, ringExtent } from '../../geometry/plane/body.ts';
import { formatMeasured, type LengthUnit } from '../../geometry/units/index.ts';
import { lineSlot, type Slot } from './placer.ts';
import { COLOUR, LINE_MM, TYPE_MM } from './style.ts';
import { line, num } from './svg.ts';
import { drawText, textWidth } from './text.ts';
import { toPaper, type View } from './view.ts';

/** Distances of the dimension lines from the outermost wall, mm of paper. */
const CHAIN = 6;
const WHOLE = 11.5;
/** What a side with one line, and with two, needs of the paper. */
const SIDE_MM = { none: 4, chain: 10, whole: 15.5 } as const;

export type Side = 'top' | 'left' | 'bottom' | 'right';
interface Span {
  readonly from: number;
  readonly to: number;
}
/** Rooms' clear widths on each side; an empty chain is not drawn. */
export type Chains = Readonly<Record<Side, readonly Span[]>>;

const STYLE = { size: TYPE_MM.fine, colour: COLOUR.dimension, halo: true } as const;
/** Spans nearer than this are the same width seen twice, mm. */
const SAME = 1;

/** Chains of the rooms that stand square to the page, each room on the sides from which it is seen first. */
export function dimensionChains({ rooms }: LevelModel): Chains {
  const square = rooms.filter(isSquareToPage).map(({ floorRings }) => ringExtent(floorRings.flat()));
  const across = ({ minX, maxX }: Extent): Span => ({ from: minX, to: maxX });
  const down = ({ minY, maxY }: Extent): Span => ({ from: minY, to: maxY });
  const top = chain(square, (e) => e.minY, across);
  const left = chain(square, (e) => e.minX, down);
  return {
    top,
    left,
    bottom: unlike(
      chain(square, (e) => -e.maxY, across),
      top,
    ),
    right: unlike(
      chain(square, (e) => -e.maxX, down),
      left,
    ),
  };
}

/** Paper that the dimension lines need on each side of the building, mm. */
export function dimensionMargins(chains: Chains): Readonly<Record<Side, number>> {
  const far = (spans: readonly Span[]) => (spans.length > 0 ? SIDE_MM.chain : SIDE_MM.none);
  return { top: SIDE_MM.whole, left: SIDE_MM.whole, bottom: far(chains.bottom), right: far(chains.right) };
}

/** A dimension line with the ground that it takes. */
export interface PlannedDimension {
  readonly drawn: string;
  readonly words: Slot;
  readonly lines: readonly Slot[];
}

/** @param extent of the walls with their thickness */
export function planDimensions(
  view: View,
  chains: Chains,
  extent: Extent,
  unit: LengthUnit,
): readonly PlannedDimension[] {
  const [left, top] = toPaper(view, [extent.minX, extent.minY]);
  const [right, bottom] = toPaper(view, [extent.maxX, extent.maxY]);
  const across = (spans: readonly Span[], y: number, face: number) =>
    spans.map(({ from, to }) =>
      row(toPaper(view, [from, 0])[0], toPaper(view, [to, 0])[0], y, face, formatMeasured(to - from, unit)),
    );
  const down = (spans: readonly Span[], x: number, face: number) =>
    spans.map(({ from, to }) =>
      column(toPaper(view, [0, from])[1], toPaper(view, [0, to])[1], x, face, formatMeasured(to - from, unit)),
    );
  const all = [
    ...across(chains.top, top - CHAIN, top),
    ...across([{ from: extent.minX, to: extent.maxX }], top - WHOLE, top),
    ...across(chains.bottom, bottom + CHAIN, bottom),
    ...down(chains.left, left - CHAIN, left),
    ...down([{ from: extent.minY, to: extent.maxY }], left - WHOLE, left),
    ...down(chains.right, right + CHAIN, right),
  ];
  return all.filter((planned) => planned !== null);
}

/** "20 ft 9 3/4 in × 24 ft": sides of a four-cornered room; of any other, how far it reaches, with "at most". */
export function roomSizeWords({ floorRings }: Room, unit: LengthUnit): string {
  const ring = floorRings[0] ?? [];
  const turn = longestEdgeTurn(ring);
  const turned = floorRings.flat().map(([x, y]): XY => [x * turn.cos + y * turn.sin, y * turn.cos - x * turn.sin]);
  const { minX, minY, maxX, maxY } = ringExtent(turned);
  const sizes = [maxX - minX, maxY - minY];
  const words = sizes.map((size) => formatMeasured(size, unit)).join(' × ');
  const box = (sizes[0] ?? 0) * (sizes[1] ?? 0);
  const full = floorRings.length === 1 && Math.abs(area(ring) - box) <= 1e-6 * box;
  return full ? words : `${words} at most`;
}

function chain(extents: readonly Extent[], depth: (e: Extent) => number, span: (e: Extent) => Span): readonly Span[] {
  const taken: Span[] = [];
  for (const extent of [...extents].sort((a, b) => depth(a) - depth(b))) {
    const one = span(extent);
    if (taken.every(({ from, to }) => one.to <= from + SAME || one.from >= to - SAME)) taken.push(one);
  }
  return taken.sort((a, b) => a.from - b.from);
}

function unlike(spans: readonly Span[], shown: readonly Span[]): readonly Span[] {
  const known = (span: Span) =>
    shown.some(({ from, to }) => Math.abs(from - span.from) < SAME && Math.abs(to - span.to) < SAME);
  return spans.every(known) ? [] : spans;
}

function isSquareToPage({ floorRings }: Room): boolean {
  const { cos, sin } = longestEdgeTurn(floorRings[0] ?? []);
  return Math.min(Math.abs(cos), Math.abs(sin)) < 1e-3;
}

/** Direction of the longest edge, within a quarter turn of the page's x. */
function longestEdgeTurn(ring: readonly XY[]): { readonly cos: number; readonly sin: number } {
  let best = { length: 0, dx: 1, dy: 0 };
  ring.forEach(([x, y], i) => {
    const [nx, ny] = ring[(i + 1) % ring.length] as XY;
    const length = Math.hypot(nx - x, ny - y);
    if (length > best.length + SAME) best = { length, dx: nx - x, dy: ny - y };
  });
  const angle = Math.atan2(best.dy, best.dx);
  const near = angle - Math.round(angle / (Math.PI / 2)) * (Math.PI / 2);
  return { cos: Math.cos(near), sin: Math.sin(near) };
}

function area(ring: readonly XY[]): number {
  const sum = ring.reduce((total, [x, y], i) => {
    const [nx, ny] = ring[(i + 1) % ring.length] as XY;
    return total + x * ny - nx * y;
  }, 0);
  return Math.abs(sum) / 2;
}

/** A dimension along x. One too short for its words is left out: the room says it itself. */
function row(x1: number, x2: number, y: number, face: number, words: string): PlannedDimension | null {
  const width = textWidth(words, STYLE);
  if (width + 1 > x2 - x1) return null;
  const out = Math.sign(y - face);
  const middle = (x1 + x2) / 2;
  const ends = [x1, x2].flatMap((x) => [
    line(x, face + out * 1.5, x, y + out * 1.2, THIN),
    line(x - 0.7, y + 0.7, x + 0.7, y - 0.7, TICK),
  ]);
  const text = drawText(middle, y - 0.8, words, { ...STYLE, anchor: 'middle' });
  return {
    drawn: [line(x1, y, x2, y, THIN), ...ends, text].join(''),
    words: { x: middle, y: y - 1.6, width: width + 1, height: 2.6, turn: 0 },
    lines: [lineSlot(x1, y, x2, y), lineSlot(x1, face, x1, y), lineSlot(x2, face, x2, y)],
  };
}

/** The same along y, its words turned to be read from the right. */
function column(y1: number, y2: number, x: number, face: number, words: string): PlannedDimension | null {
  const width = textWidth(words, STYLE);
  if (width + 1 > y2 - y1) return null;
  const out = Math.sign(x - face);
  const middle = (y1 + y2) / 2;
  const ends = [y1, y2].flatMap((y) => [
    line(face + out * 1.5, y, x + out * 1.2, y, THIN),
    line(x - 0.7, y + 0.7, x + 0.7, y - 0.7, TICK),
  ]);
  const turned = { transform: `rotate(-90 ${num(x - 0.8)} ${num(middle)})` };
  return {
    drawn: [
      line(x, y1, x, y2, THIN),
      ...ends,
      drawText(x - 0.8, middle, words, { ...STYLE, anchor: 'middle' }, turned),
    ].join(''),
    words: { x: x - 1.6, y: middle, width: width + 1, height: 2.6, turn: 90 },
    lines: [lineSlot(x, y1, x, y2), lineSlot(face, y1, x, y1), lineSlot(face, y2, x, y2)],
  };
}

const THIN = { stroke: COLOUR.dimension, 'stroke-width': LINE_MM.dimension };
const TICK = { stroke: COLOUR.dimension, 'stroke-width': LINE_MM.dimension * 2 };
