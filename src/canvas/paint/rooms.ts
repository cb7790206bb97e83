import type { Extent } from '../../../geometry/body.ts';
import type { XY } from '../../../geometry/plan/model.ts';
import type { RoomRegion } from '../../../geometry/region/types.ts';
import type { Dimension } from '../../../geometry/room-dimensions.ts';
import { LINE_PX } from '../../design/tokens.ts';
import type { SizePx } from '../../state/viewport.ts';
import type { Places } from './names.ts';
import { lengthPx, type Pen, px, stroke } from './pen.ts';
import { drawText, FINE, READ, SMALL, type TextStyle, textWidth, uprightAngle } from './text.ts';

/** The lines of a room's sign: its name large, then its area, then why it is out where it is. */
export interface RoomSign {
  readonly name: string;
  readonly lines: readonly string[];
  readonly at: XY;
  readonly chosen: boolean;
}

/** Below the drawing, past its dimensions, px. */
const UNDER_PX = 66;
/** Lines closer than this run into one another. */
const LINE_HEIGHT = 1.3;
/** A room narrower than this on screen gets its name only, and only where it finds room, px. */
const FULL_SIGN_PX = 90;

/** Steps by which a sign makes way for what stands there, px. */
const ASIDE_PX = [0, -22, 22, -44, 44, -68, 68, -104, 104] as const;

/**
 * Each room's sign at its name's place, or aside of it within the room where something stands there. Lines that are wider
 * than the room are left out.
 */
export function paintRoomSigns(
  pen: Pen,
  signs: readonly (RoomSign & { readonly room: RoomRegion })[],
  inRoom: (room: RoomRegion, at: XY) => boolean,
  places: Places,
): void {
  const { theme } = pen;
  const head: TextStyle = { ...READ, colour: theme.ink, halo: theme.paper };
  const small: TextStyle = { ...SMALL, colour: theme.inkSoft, halo: theme.paper };
  for (const { name, lines, at, room, chosen } of signs) {
    const breadth = lengthPx(pen, Math.sqrt(room.room.floorArea)) * 1.15;
    const fits = [
      { text: name, style: chosen ? { ...head, colour: theme.accent } : head },
      ...(breadth >= FULL_SIGN_PX ? lines : []).map((text) => ({ text, style: small })),
    ].filter(({ text, style }) => textWidth(pen, text, style) < breadth);
    if (fits[0]?.text !== name) continue;
    // All lines where they find room, else the name alone, else the name where it was put.
    const place = (rows: readonly Row[]) => placedSign(pen, rows, at, (p) => inRoom(room, p), places);
    const found = place(fits) ?? place(fits.slice(0, 1));
    if (found) writeRows(pen, found);
    else if (fits[0] && breadth >= FULL_SIGN_PX) writeRows(pen, { rows: fits.slice(0, 1), middle: px(pen, at) });
  }
}

interface Row {
  readonly text: string;
  readonly style: TextStyle;
}
interface PlacedSign {
  readonly rows: readonly Row[];
  readonly middle: XY;
}

function sizeOf(pen: Pen, rows: readonly Row[]): readonly [width: number, height: number] {
  const width = Math.max(0, ...rows.map(({ text, style }) => textWidth(pen, text, style)));
  return [width, rows.reduce((sum, { style }) => sum + style.sizePx * LINE_HEIGHT, 0)];
}

function placedSign(
  pen: Pen,
  rows: readonly Row[],
  at: XY,
  inRoom: (screen: XY) => boolean,
  places: Places,
): PlacedSign | null {
  if (rows.length === 0) return null;
  const [width, height] = sizeOf(pen, rows);
  const [x, y] = px(pen, at);
  const far = ([mx, my]: XY) => Math.hypot(mx - x, my - y);
  const middles = ASIDE_PX.flatMap((dy) => ASIDE_PX.map((dx): XY => [x + dx * 1.5, y + dy])).sort(
    (a, b) => far(a) - far(b),
  );
  const corners = [-0.5, 0.5].flatMap((sx) => [-0.5, 0.5].map((sy): XY => [sx * width, sy * height]));
  const inside = middles.filter(([mx, my]) => corners.every(([dx, dy]) => inRoom([mx + dx, my + dy])));
  const middle = inside.find((each) => places.claim(each, width + 8, height + 4));
  return middle ? { rows, middle } : null;
}

function writeRows(pen: Pen, { rows, middle }: PlacedSign): void {
  let top = middle[1] - sizeOf(pen, rows)[1] / 2;
  for (const { text, style } of rows) {
    const step = style.sizePx * LINE_HEIGHT;
    drawText(pen, text, [middle[0], top + step / 2], style);
    top += step;
  }
}

/** Says under the drawing that this is not the level to test, and why. */
export function paintLevelBar(pen: Pen, bar: string, extent: Extent | null, stage: SizePx, places: Places): void {
  if (!extent) return;
  const [left, bottom] = px(pen, [extent.minX, extent.maxY]);
  const [right] = px(pen, [extent.maxX, extent.maxY]);
  const head: TextStyle = { ...READ, colour: pen.theme.verdict.blocked.line, halo: pen.theme.card };
  const line: TextStyle = { sizePx: READ.sizePx, colour: pen.theme.ink, halo: pen.theme.card };
  const rows = [
    { text: 'Not the level to test', style: head },
    { text: bar, style: line },
  ];
  const [width, height] = sizeOf(pen, rows);
  // In view, however large the drawing is.
  const middle: XY = [(left + right) / 2, Math.min(bottom + UNDER_PX, stage.height - height / 2 - 6)];
  places.keep(middle, width, height);
  writeRows(pen, { rows, middle });
}

/** How far a dimension line stands off the wall's outer face, and inside a room off the face, px. */
const OFF_OUTSIDE_PX = 22;
const OFF_INSIDE_PX = 13;
const TICK_PX = 5;

/** Fine lines with slanting ticks and the length over them. What is too short on screen for its figure is left out. */
export function paintDimensions(
  pen: Pen,
  dimensions: readonly Dimension[],
  words: (dimension: Dimension) => string,
  places: Places,
): void {
  const style: TextStyle = { ...FINE, colour: pen.theme.dimension, halo: pen.theme.card };
  for (const dimension of dimensions) {
    const text = words(dimension);
    const width = textWidth(pen, text, style);
    if (lengthPx(pen, dimension.length) < width + 16) continue;
    const off = dimension.wallBehind === null ? -OFF_INSIDE_PX : lengthPx(pen, dimension.wallBehind) + OFF_OUTSIDE_PX;
    const [a, b] = [dimension.from, dimension.to].map((point): XY => {
      const [x, y] = px(pen, point);
      return [x + dimension.outward[0] * off, y + dimension.outward[1] * off];
    }) as [XY, XY];
    const middle: XY = [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2];
    const angle = uprightAngle(Math.atan2(b[1] - a[1], b[0] - a[0]));
    const [w, h] = [Math.abs(Math.cos(angle)) * width + 14, Math.abs(Math.sin(angle)) * width + 14];
    if (!places.claim(middle, w, h)) continue;
    if (dimension.wallBehind !== null) paintExtensions(pen, dimension, off);
    paintDimensionLine(pen, a, b, width + 10);
    drawText(pen, text, middle, style, angle);
  }
}

/** A line with a slanting tick at each end and a gap in its middle for the figure, screen px. */
export function paintDimensionLine(pen: Pen, a: XY, b: XY, gap = 0): void {
  const { ctx, theme } = pen;
  const angle = Math.atan2(b[1] - a[1], b[0] - a[0]) + Math.PI / 4;
  const half = gap / 2 / (Math.hypot(b[0] - a[0], b[1] - a[1]) || 1);
  const at = (share: number): XY => [a[0] + (b[0] - a[0]) * share, a[1] + (b[1] - a[1]) * share];
  ctx.beginPath();
  ctx.moveTo(...a);
  ctx.lineTo(...at(Math.max(0, 0.5 - half)));
  ctx.moveTo(...at(Math.min(1, 0.5 + half)));
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
