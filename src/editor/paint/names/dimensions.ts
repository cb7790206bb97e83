import type { Dimension } from '../../../../geometry/dimension/room-dimensions.ts';
import type { RunningDimension } from '../../../../geometry/dimension/running-dimensions.ts';
import type { LevelModel } from '../../../../geometry/level/types.ts';
import type { XY } from '../../../../geometry/plan/model.ts';
import { memoize } from '../../../../geometry/plane/memoize.ts';
import { LINE_PX } from '../../../theme/tokens.ts';
import { union } from '../../stage/rect.ts';
import { lengthPx, type Pen, px, stroke } from '../pen.ts';
import { drawText, FINE, type TextStyle, textWidth, uprightAngle } from '../text.ts';
import { boxAbout, type Mark } from './mark.ts';
import type { Places } from './places.ts';

/** How far a dimension line stands off the wall's outer face, and inside a room off the face, px. */
const OFF_OUTSIDE_PX = 20;
const OFF_INSIDE_PX = 13;
const TICK_PX = 5;
/** The figure stands in the middle of its line, or nearer to one end where the middle is taken. */
const SHARES = [0.5, 0.36, 0.64, 0.24, 0.76] as const;

/** A figure on the sheet that can be pressed; px from the plan's origin, at the scale that it was laid out for. */
export interface DimensionFigure {
  readonly dimension: RunningDimension;
  readonly middle: XY;
  readonly angle: number;
  readonly text: string;
  /** Along its line. */
  readonly width: number;
}

/** What a figure takes up: where names and other figures must not stand. */
export interface Ground {
  readonly places: Places;
  /** Figures alone: each has a target of its own, so large, px. */
  readonly targets: Places;
  readonly targetPx: number;
}

export interface PlacedDimensions {
  readonly marks: readonly Mark[];
  readonly figures: readonly DimensionFigure[];
}

/** Fine lines with slanting ticks and the length over them. What is too short on screen for its figure is left out. */
export function placeDimensions(
  pen: Pen,
  dimensions: readonly RunningDimension[],
  words: (dimension: Dimension) => string,
  ground: Ground,
  model: LevelModel,
): PlacedDimensions {
  const style: TextStyle = { ...FINE, colour: pen.theme.dimension, halo: pen.theme.card };
  const drawn = dimensions.flatMap((dimension): Drawn[] => {
    const text = words(dimension);
    const width = textWidth(pen, text, style);
    const off = offPx(pen, dimension, ground.targetPx);
    const [a, b] = [dimension.from, dimension.to].map((point): XY => {
      const [x, y] = px(pen, point);
      return [x + dimension.outward[0] * off, y + dimension.outward[1] * off];
    }) as [XY, XY];
    const angle = uprightAngle(Math.atan2(b[1] - a[1], b[0] - a[0]));
    const share = freeShare(
      a,
      b,
      width,
      angle,
      sharesFor(dimension, Math.hypot(b[0] - a[0], b[1] - a[1]), width, ground),
      ground,
    );
    if (share === null) return [];
    const middle: XY = [a[0] + (b[0] - a[0]) * share, a[1] + (b[1] - a[1]) * share];
    return [{ dimension, a, b, share, middle, angle, off, text, width, style }];
  });
  return { marks: drawn.map((each) => dimensionMark(pen, each, model)), figures: drawn };
}

/** A dimension as it is drawn, screen px. */
interface Drawn extends DimensionFigure {
  readonly a: XY;
  readonly b: XY;
  readonly share: number;
  readonly off: number;
  readonly style: TextStyle;
}

function offPx(pen: Pen, { wallBehind, beyondString }: RunningDimension, targetPx: number): number {
  const beyond = beyondString ? targetPx + 2 : 0;
  return wallBehind === null ? -OFF_INSIDE_PX - beyond : lengthPx(pen, wallBehind) + OFF_OUTSIDE_PX + beyond;
}

/** Where a figure may stand on its line, as shares of it: within, or beyond the corner of the house where the line is too short. */
function sharesFor(
  { ends, wallBehind, row }: RunningDimension,
  long: number,
  width: number,
  { targetPx }: Ground,
): readonly number[] {
  if (long >= Math.max(width, targetPx) + 8) {
    return SHARES.filter((share) => Math.min(share, 1 - share) * long >= width / 2 + 4);
  }
  if (row === 'whole' || wallBehind === null || long < 2 * TICK_PX) return [];
  const beyond = (Math.max(width, targetPx) / 2 + 2 * TICK_PX) / long;
  return [...(ends[0].kind === 'corner' ? [-beyond] : []), ...(ends[1].kind === 'corner' ? [1 + beyond] : [])];
}

/** Where along the line the figure finds room, as a share of it; takes that room. Null where it finds none. */
function freeShare(
  a: XY,
  b: XY,
  width: number,
  angle: number,
  shares: readonly number[],
  { places, targets, targetPx }: Ground,
): number | null {
  const [cos, sin] = [Math.abs(Math.cos(angle)), Math.abs(Math.sin(angle))];
  const [w, h] = [cos * width + 14, sin * width + 14];
  const [across, down] = [Math.max(w, targetPx), Math.max(h, targetPx)];
  for (const share of shares) {
    const middle: XY = [a[0] + (b[0] - a[0]) * share, a[1] + (b[1] - a[1]) * share];
    if (!targets.isFree(middle, across, down) || !places.claim(middle, w, h)) continue;
    targets.keep(middle, across, down);
    return share;
  }
  return null;
}

/** A figure that is left out as soon as it is no longer true: `sheet-names.ts` writes the new one. */
function dimensionMark(
  pen: Pen,
  { dimension, a, b, share, middle, angle, off, text, width, style }: Drawn,
  before: LevelModel,
): Mark {
  const points = [px(pen, dimension.from), px(pen, dimension.to), a, b].map((at) =>
    boxAbout(at, 2 * TICK_PX, 2 * TICK_PX),
  );
  return {
    draw: (on) => {
      if (dimension.wallBehind !== null) paintExtensions(on, dimension, off);
      paintDimensionLine(on, a, b, width + 10, share);
      drawText(on, text, middle, style, angle);
    },
    box: [...points, boxAbout(middle, width + style.sizePx, width + style.sizePx)].reduce(union),
    followed: function (this: Mark, _, { model }) {
      return isStill(dimension, before, model) ? this : null;
    },
  };
}

/**
 * Whether a length is what it was: its room and the openings that it ends at are the same objects. Asked of every figure in every frame
 * of a pull, so nothing is measured.
 */
function isStill({ room, ends }: RunningDimension, before: LevelModel, now: LevelModel): boolean {
  const [was, is] = [partsOf(before), partsOf(now)];
  const same = (key: string) => was.get(key) !== undefined && was.get(key) === is.get(key);
  return same(`room ${room}`) && ends.every((end) => end.kind === 'corner' || same(`opening ${end.opening}`));
}

const partsOf = memoize(
  ({ rooms, level }: LevelModel): ReadonlyMap<string, object> =>
    new Map<string, object>([
      ...rooms.map((room) => [`room ${room.key}`, room] as const),
      ...level.openings.map((opening) => [`opening ${opening.id}`, opening] as const),
    ]),
);

/** A line with a slanting tick at each end and a gap for the figure, screen px. @param share where on the line the gap is */
export function paintDimensionLine(pen: Pen, a: XY, b: XY, gap = 0, share = 0.5): void {
  const { ctx, theme } = pen;
  const angle = Math.atan2(b[1] - a[1], b[0] - a[0]) + Math.PI / 4;
  const half = gap / 2 / (Math.hypot(b[0] - a[0], b[1] - a[1]) || 1);
  const at = (along: number): XY => [a[0] + (b[0] - a[0]) * along, a[1] + (b[1] - a[1]) * along];
  ctx.beginPath();
  // A figure beyond an end interrupts nothing.
  const [before, after] = share < 0 || share > 1 ? [0, 0] : [Math.max(0, share - half), Math.min(1, share + half)];
  ctx.moveTo(...a);
  ctx.lineTo(...at(before));
  ctx.moveTo(...at(after));
  ctx.lineTo(...b);
  for (const [x, y] of [a, b]) {
    ctx.moveTo(x - Math.cos(angle) * TICK_PX, y - Math.sin(angle) * TICK_PX);
    ctx.lineTo(x + Math.cos(angle) * TICK_PX, y + Math.sin(angle) * TICK_PX);
  }
  stroke(pen, theme.dimension, LINE_PX.dimension * 0.8);
}

/** Thin lines from the wall's outer face to a dimension that stands outside. */
function paintExtensions(pen: Pen, { from, to, outward, wallBehind }: Dimension, off: number): void {
  const start = lengthPx(pen, wallBehind ?? 0) + 5;
  pen.ctx.beginPath();
  for (const point of [from, to]) {
    const [x, y] = px(pen, point);
    pen.ctx.moveTo(x + outward[0] * start, y + outward[1] * start);
    pen.ctx.lineTo(x + outward[0] * (off + TICK_PX), y + outward[1] * (off + TICK_PX));
  }
  stroke(pen, pen.theme.dimension, LINE_PX.dimension * 0.4);
}
