import type { RunningDimension } from '../../../geometry/dimension/running-dimensions.ts';
import type { XY } from '../../../geometry/plan/model.ts';
import type { Extent } from '../../../geometry/plane/extent.ts';
import { along, distance } from '../../../geometry/plane/point.ts';
import type { Line } from '../../../geometry/plane/types.ts';
import { formatMeasured, type LengthUnit } from '../../../geometry/units/index.ts';
import { inked, linesPart, type Shape } from '../display-list.ts';
import type { TextStyle } from '../text.ts';
import type { DimensionLabel, LabelSheet } from './label.ts';
import { endMarks } from './measured.ts';
import { createPlacer, DRAWN, type Placer } from './placer.ts';
import { lineSlot, type Slot, slotAt, turnAlong, turned } from './slot.ts';

/** Half the length of a tick, and the gap on each side of a figure, as multiples of the type size. */
const TICK = 0.38;
const GAP = 0.4;
/** Positions of a figure on its line in the order tried, as shares of the line: the middle, then nearer to one end. */
const SHARES = [0.5, 0.36, 0.64, 0.24, 0.76] as const;

/**
 * Returns a function that writes dimensions: fine lines with slanting ticks and the length in a gap. It leaves out a dimension that is too
 * short for its figure, or that would run through a wall, a thing or another text.
 */
export function dimensionWriter(unit: LengthUnit, sheet: LabelSheet) {
  // The touch targets of the figures.
  const targets = createPlacer(null, 4 * sheet.type.fine);
  return (dimensions: readonly PlacedDimension[]): readonly DimensionLabel[] =>
    dimensions.flatMap((dimension) => dimensionLabel(dimension, unit, sheet, targets) ?? []);
}

/** A dimension that is drawn `more` mm farther out than its row. */
export type PlacedDimension = RunningDimension & { readonly more?: number };

/**
 * Returns the overall width and depth of the building as dimensions outside all others.
 * @param more distance beyond one row of dimensions, mm
 */
export function overallDimensions({ minX, minY, maxX, maxY }: Extent, more = 0): readonly PlacedDimension[] {
  const rest = { wallBehind: 0, room: '', row: 'whole', beyondString: true, more } as const;
  const ends = [{ kind: 'corner' }, { kind: 'corner' }] as const;
  return [
    { ...rest, ends, key: 'across', from: [minX, minY], to: [maxX, minY], length: maxX - minX, outward: [0, -1] },
    { ...rest, ends, key: 'down', from: [minX, minY], to: [minX, maxY], length: maxY - minY, outward: [-1, 0] },
  ];
}

function dimensionLabel(
  dimension: PlacedDimension,
  unit: LengthUnit,
  sheet: LabelSheet,
  targets: Placer,
): DimensionLabel | null {
  const { placer } = sheet;
  const text = formatMeasured(dimension.length, unit);
  const style: TextStyle = { size: sheet.type.fine, color: 'dimension', halo: 'sheet' };
  const width = sheet.measure(text, style);
  const size = { width: width + 2 * GAP * style.size, height: style.size };
  const {
    line: [a, b],
    extensions,
  } = linesOf(dimension, sheet);
  const [across, thin] = [2 * TICK * style.size, 0.15 * style.size];
  const line = lineSlot(a, b, across);
  const strokes = extensions.map((each) => lineSlot(...each, thin));
  if (!placer.isFree(line, ['line'])) return null;
  // The ticks at its ends reach into the walls.
  if (!placer.isFree({ ...line, width: line.width + across }, DRAWN)) return null;
  if (!strokes.every((stroke) => placer.isFree(stroke, ['line', 'wall']))) return null;
  for (const share of sharesFor(dimension, line.width, width, sheet)) {
    const slot = slotAt(size, along(a, b, share), turnAlong(a, b));
    const target = targetOf(slot, sheet.dimensions.target);
    if (!placer.isFree(slot) || !targets.isFree(target)) continue;
    targets.take(target);
    placer.take(slot);
    for (const stroke of [lineSlot(a, b, thin), ...strokes]) placer.take(stroke, 'line');
    const drawn = dimensionLine(a, b, style.size, slot.width, share);
    const fine = inked({ line: 'extension', color: 'dimension' }, linesPart(extensions));
    return {
      dimension,
      texts: [{ text, at: [slot.x, slot.y], turn: slot.turn, style }],
      shapes: extensions.length > 0 ? [fine, drawn] : [drawn],
      slots: [slot],
    };
  }
  return null;
}

/** The dimension line beside its wall, and extension lines to it from the wall's outer face if it is outside. */
function linesOf(
  { from, to, outward, wallBehind, beyondString, more: farther = 0 }: PlacedDimension,
  { dimensions, type }: LabelSheet,
) {
  const { outside, inside, step } = dimensions;
  const more = (beyondString ? step : 0) + farther;
  const off = wallBehind === null ? -inside - more : wallBehind + outside + more;
  const beyond = ([x, y]: XY, by: number): XY => [x + outward[0] * by, y + outward[1] * by];
  const line: Line = [beyond(from, off), beyond(to, off)];
  if (wallBehind === null) return { line, extensions: [] };
  const [start, end] = [wallBehind + 0.4 * type.fine, off + TICK * type.fine];
  return { line, extensions: [from, to].map((each): Line => [beyond(each, start), beyond(each, end)]) };
}

/** Positions of a figure, as shares of its line: on the line, or beyond a corner of the house if the line is too short. */
function sharesFor(
  { ends, wallBehind, row }: RunningDimension,
  long: number,
  width: number,
  { type, dimensions: { target } }: LabelSheet,
): readonly number[] {
  const tick = TICK * type.fine;
  if (long >= Math.max(width, target) + 0.6 * type.fine) {
    return SHARES.filter((share) => Math.min(share, 1 - share) * long >= width / 2 + 0.3 * type.fine);
  }
  if (row === 'whole' || wallBehind === null || long < 2 * tick) return [];
  const past = (Math.max(width, target) / 2 + GAP * type.fine + 2 * tick) / long;
  return [-past, 1 + past].filter((_, end) => ends[end]?.kind === 'corner');
}

/** The touch target of a figure: an upright rectangle. */
function targetOf({ x, y, width, height, turn }: Slot, target: number): Slot {
  const [along, across] = [turned([width, 0], turn), turned([0, height], turn)];
  const [right, down] = [0, 1].map((axis) => Math.abs(along[axis] ?? 0) + Math.abs(across[axis] ?? 0)) as [
    number,
    number,
  ];
  return slotAt({ width: Math.max(right, target), height: Math.max(down, target) }, [x, y]);
}

/**
 * Returns a line with a slanting tick at each end and a gap for the figure.
 * @param share position of the middle of the gap, as a share of the line; outside 0 to 1 the line has no gap
 */
export function dimensionLine(a: XY, b: XY, size: number, gap = 0, share = 0.5): Shape {
  const half = gap / 2 / (distance(a, b) || 1);
  const isWhole = gap === 0 || share < 0 || share > 1;
  const parted: readonly Line[] = [
    [a, along(a, b, Math.max(0, share - half))],
    [along(a, b, Math.min(1, share + half)), b],
  ];
  const lines = [...(isWhole ? [[a, b]] : parted), ...endMarks(a, b, TICK * size, Math.PI / 4)];
  return inked({ line: 'dimension', color: 'dimension' }, linesPart(lines));
}
