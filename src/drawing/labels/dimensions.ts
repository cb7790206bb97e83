import type { RunningDimension } from '../../../geometry/dimension/running-dimensions.ts';
import type { XY } from '../../../geometry/plan/model.ts';
import type { Extent } from '../../../geometry/plane/body.ts';
import { linesPart, type Shape } from '../display-list.ts';
import type { TextStyle } from '../text.ts';
import { turnAlong } from './block.ts';
import { type Label, type LabelMedium, toUnits, unitsOf } from './medium.ts';
import { LEADER_OVER, lineSlot, type Placer, type Slot } from './placer.ts';

/** A length that is written along its line. */
export interface DimensionLabel extends Label {
  readonly dimension: RunningDimension;
  /** Middle of the figure, its turn in degrees, and its width along the line. */
  readonly middle: XY;
  readonly turn: number;
  readonly width: number;
}

/** Half a tick, and the gap about a figure on either side, in sizes of the type. */
const TICK = 0.38;
const GAP = 0.4;
/** The figure stands in the middle of its line, or nearer to one end where the middle is taken. */
const SHARES = [0.5, 0.36, 0.64, 0.24, 0.76] as const;

/**
 * Fine lines with slanting ticks and the length in a gap of them. Left out is what is too short for its figure, and what would run
 * through a wall, a thing or another text.
 * @param targets the figures alone, each with the ground by which it is pressed
 */
export function dimensionLabels(
  dimensions: readonly RunningDimension[],
  words: (dimension: RunningDimension) => string,
  medium: LabelMedium,
  placer: Placer,
  targets: Placer,
): readonly DimensionLabel[] {
  return dimensions.flatMap((dimension) => dimensionLabel(dimension, words(dimension), medium, placer, targets) ?? []);
}

/** How far the whole building reaches, across and down, beyond all other lines. */
export function overallDimensions({ minX, minY, maxX, maxY }: Extent): readonly RunningDimension[] {
  const rest = { wallBehind: 0, room: '', row: 'whole', beyondString: true } as const;
  const ends = [{ kind: 'corner' }, { kind: 'corner' }] as const;
  return [
    { ...rest, ends, key: 'across', from: [minX, minY], to: [maxX, minY], length: maxX - minX, outward: [0, -1] },
    { ...rest, ends, key: 'down', from: [minX, minY], to: [minX, maxY], length: maxY - minY, outward: [-1, 0] },
  ];
}

function dimensionLabel(
  dimension: RunningDimension,
  text: string,
  medium: LabelMedium,
  placer: Placer,
  targets: Placer,
): DimensionLabel | null {
  const style: TextStyle = { size: medium.type.fine, color: 'dimension', halo: 'sheet' };
  const width = medium.measure(text, style);
  const off = offOf(dimension, medium);
  const [a, b] = [beyond(dimension.from, dimension, off, medium), beyond(dimension.to, dimension, off, medium)];
  const extensions = extensionsOf(dimension, off, medium);
  const [across, thin] = [2 * TICK * style.size, 0.15 * style.size];
  const line = lineSlot(a, b, across);
  if (!placer.isFree(line, ['edge', 'line'])) return null;
  // The ticks at its ends reach into the walls.
  if (!placer.isFree({ ...line, width: line.width + across }, LEADER_OVER)) return null;
  if (!extensions.every(([from, to]) => placer.isFree(lineSlot(from, to, thin), ['edge', 'line', 'wall']))) return null;
  const turn = turnAlong(a, b);
  const slotAt = ([x, y]: XY): Slot => ({ x, y, width: width + 2 * GAP * style.size, height: style.size, turn });
  for (const share of sharesFor(dimension, Math.hypot(b[0] - a[0], b[1] - a[1]), width, medium)) {
    const middle: XY = [a[0] + (b[0] - a[0]) * share, a[1] + (b[1] - a[1]) * share];
    const slot = slotAt(middle);
    const target = targetOf(slot, medium);
    if (!placer.isFree(slot, ['edge']) || !targets.isFree(target)) continue;
    targets.take(target);
    placer.take(slot);
    placer.take(lineSlot(a, b, thin), 'line');
    for (const [from, to] of extensions) placer.take(lineSlot(from, to, thin), 'line');
    return {
      dimension,
      middle,
      turn,
      width,
      texts: [{ text, at: middle, turn, style }],
      shapes: [
        ...(extensions.length > 0
          ? [{ ink: { line: 'extension', color: 'dimension' }, parts: [linesPart(extensions)] } as const]
          : []),
        dimensionLine(a, b, style.size, slot.width, share),
      ],
      slots: [slot],
    };
  }
  return null;
}

function offOf({ wallBehind, beyondString }: RunningDimension, medium: LabelMedium): number {
  const { outside, inside, step } = medium.dimensions;
  const more = beyondString ? step : 0;
  return wallBehind === null ? -inside - more : unitsOf(medium, wallBehind) + outside + more;
}

function beyond(point: XY, { outward }: RunningDimension, off: number, medium: LabelMedium): XY {
  const [x, y] = toUnits(medium, point);
  return [x + outward[0] * off, y + outward[1] * off];
}

/** Thin lines from the wall's outer face to a dimension that stands outside. */
function extensionsOf(dimension: RunningDimension, off: number, medium: LabelMedium): readonly (readonly [XY, XY])[] {
  if (dimension.wallBehind === null) return [];
  const size = medium.type.fine;
  const start = unitsOf(medium, dimension.wallBehind) + 0.4 * size;
  return [dimension.from, dimension.to].map((point) => [
    beyond(point, dimension, start, medium),
    beyond(point, dimension, off + TICK * size, medium),
  ]);
}

/** Where a figure may stand on its line, as shares of it: within, or beyond the corner of the house where the line is too short. */
function sharesFor(
  { ends, wallBehind, row }: RunningDimension,
  long: number,
  width: number,
  { type, dimensions: { target } }: LabelMedium,
): readonly number[] {
  const tick = TICK * type.fine;
  if (long >= Math.max(width, target) + 0.6 * type.fine) {
    return SHARES.filter((share) => Math.min(share, 1 - share) * long >= width / 2 + 0.3 * type.fine);
  }
  if (row === 'whole' || wallBehind === null || long < 2 * tick) return [];
  const past = (Math.max(width, target) / 2 + GAP * type.fine + 2 * tick) / long;
  return [...(ends[0].kind === 'corner' ? [-past] : []), ...(ends[1].kind === 'corner' ? [1 + past] : [])];
}

/** The upright ground by which a figure is pressed. */
function targetOf({ x, y, width, height, turn }: Slot, { dimensions: { target } }: LabelMedium): Slot {
  const [cos, sin] = [Math.abs(Math.cos((turn * Math.PI) / 180)), Math.abs(Math.sin((turn * Math.PI) / 180))];
  const [across, down] = [width * cos + height * sin, width * sin + height * cos];
  return { x, y, width: Math.max(across, target), height: Math.max(down, target), turn: 0 };
}

/**
 * A line with a slanting tick at each end and a gap for the figure.
 * @param share where on the line the middle of the gap is; beyond an end it interrupts nothing
 */
export function dimensionLine(a: XY, b: XY, size: number, gap = 0, share = 0.5): Shape {
  const angle = Math.atan2(b[1] - a[1], b[0] - a[0]) + Math.PI / 4;
  const [dx, dy] = [Math.cos(angle) * TICK * size, Math.sin(angle) * TICK * size];
  const half = gap / 2 / (Math.hypot(b[0] - a[0], b[1] - a[1]) || 1);
  const at = (along: number): XY => [a[0] + (b[0] - a[0]) * along, a[1] + (b[1] - a[1]) * along];
  const isWhole = gap === 0 || share < 0 || share > 1;
  const runs = isWhole
    ? [[a, b]]
    : [
        [a, at(Math.max(0, share - half))],
        [at(Math.min(1, share + half)), b],
      ];
  const ticks = [a, b].map(([x, y]): readonly XY[] => [
    [x - dx, y - dy],
    [x + dx, y + dy],
  ]);
  return { ink: { line: 'dimension', color: 'dimension' }, parts: [linesPart([...runs, ...ticks])] };
}
