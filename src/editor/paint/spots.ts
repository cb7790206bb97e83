import type { Check } from '../../../geometry/check/types.ts';
import type { XY } from '../../../geometry/plan/model.ts';
import { type SpotMark, useShown } from '../../state/shown.ts';
import { LINE_PX } from '../../theme/tokens.ts';
import { paintCorners } from './corners.ts';
import { paintMeasures } from './detectors.ts';
import type { Places } from './names/places.ts';
import { lengthPx, type Pen, px, stroke, traceLine } from './pen.ts';
import { drawText, FINE, textWidth } from './text.ts';

/** Arms of the cross that marks a good place, px. */
const ARM_PX = 7;
/** The tag with the name stands off the cross, px. */
const TAG_PX = { off: 15, height: 19, least: 19 } as const;
/** The ring of a place that is looked at is never smaller, px. */
const LEAST_RING_PX = 11;

/** What the panels ask to be shown on the level in view: the way of the air, then good places. */
export function paintShown(pen: Pen, levelId: string, words: (check: Check) => string, places: Places): void {
  const shown = useShown.getState();
  if (shown.corners?.levelId === levelId) paintCorners(pen, shown.corners.at);
  if (shown.levelId !== levelId) return;
  if (shown.air) paintAir(pen, shown.air, places);
  const lit = shown.group ?? shown.spots.find(({ name }) => name === shown.lit) ?? null;
  paintSpots(pen, shown.group ? [...shown.spots, shown.group] : shown.spots, lit, words, places);
}

/** Good places as crosses with a tag, as one chalks them on a floor; the one that is looked at with its rim and its measured line. */
function paintSpots(
  pen: Pen,
  marks: readonly SpotMark[],
  lit: SpotMark | null,
  words: (check: Check) => string,
  places: Places,
): void {
  if (lit?.limit) paintMeasures(pen, [lit.limit], words, places);
  const shown = lit ? [lit, ...marks.filter((mark) => mark !== lit)] : marks;
  for (const { axes } of shown) for (const axis of axes) places.keep(px(pen, axis), 2 * ARM_PX, 2 * ARM_PX);
  for (const mark of [...shown].reverse()) paintCross(pen, mark, mark === lit);
  // The one that is looked at has the first choice of where its tag stands.
  for (const mark of shown) paintTag(pen, mark, mark === lit, places);
}

function paintCross(pen: Pen, { axes, radius }: SpotMark, lit: boolean): void {
  const { ctx, theme } = pen;
  for (const axis of axes) {
    const [x, y] = px(pen, axis);
    if (lit) {
      ctx.beginPath();
      ctx.arc(x, y, Math.max(LEAST_RING_PX, lengthPx(pen, radius)), 0, 2 * Math.PI);
      ctx.fillStyle = theme.paper;
      ctx.fill();
      stroke(pen, theme.accent, LINE_PX.detector, [4, 3]);
    }
    ctx.beginPath();
    ctx.moveTo(x - ARM_PX, y - ARM_PX);
    ctx.lineTo(x + ARM_PX, y + ARM_PX);
    ctx.moveTo(x - ARM_PX, y + ARM_PX);
    ctx.lineTo(x + ARM_PX, y - ARM_PX);
    stroke(pen, theme.paper, LINE_PX.detector * 2.5);
    stroke(pen, theme.accent, LINE_PX.detector);
  }
}

/** The name on a square tag beside the cross, where no other word stands; above it to the right where words stand all round. */
function paintTag(pen: Pen, { axes: [first], name }: SpotMark, lit: boolean, places: Places): void {
  if (!first) return;
  const { ctx, theme } = pen;
  const [x, y] = px(pen, first);
  const style = { ...FINE, bold: true, color: lit ? theme.onAccent : theme.accent };
  const width = Math.max(TAG_PX.least, textWidth(pen, name, style) + 8);
  const [dx, dy] = [TAG_PX.off + width / 2 - 6, TAG_PX.off];
  const corners: XY[] = [
    [x + dx, y - dy],
    [x - dx, y - dy],
    [x + dx, y + dy],
    [x - dx, y + dy],
  ];
  const middle = corners.find((corner) => places.claim(corner, width, TAG_PX.height)) ?? [x + dx, y - dy];
  ctx.beginPath();
  ctx.rect(middle[0] - width / 2, middle[1] - TAG_PX.height / 2, width, TAG_PX.height);
  ctx.fillStyle = lit ? theme.accent : theme.paper;
  ctx.fill();
  stroke(pen, theme.accent, 1.25);
  drawText(pen, name, middle, style);
}

/** Dashes of the air's way, px. */
const AIR_DASH = [7, 5] as const;

/** The way of the air round the walls: fine and broken, so that nobody takes it for a measured line, with the word on it. */
function paintAir(pen: Pen, points: readonly XY[], places: Places): void {
  const { theme } = pen;
  pen.ctx.beginPath();
  traceLine(pen, points);
  stroke(pen, theme.paper, LINE_PX.dimension * 3.5);
  stroke(pen, theme.inkSoft, LINE_PX.dimension, AIR_DASH);
  const style = { ...FINE, color: theme.inkSoft, halo: theme.paper };
  const width = textWidth(pen, 'air', style) + 6;
  const middles = longestFirst(points.map((point) => px(pen, point)));
  const at = middles.find((middle) => places.claim(middle, width, style.sizePx + 4)) ?? middles[0];
  if (at) drawText(pen, 'air', at, style);
}

/** Middles of the stretches of a line, that of the longest first. */
function longestFirst(line: readonly XY[]): readonly XY[] {
  return line
    .slice(1)
    .map((b, index) => ({ a: line[index] as XY, b }))
    .sort((one, other) => lengthOf(other) - lengthOf(one))
    .map(({ a, b }): XY => [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2]);
}

function lengthOf({ a, b }: { readonly a: XY; readonly b: XY }): number {
  return Math.hypot(b[0] - a[0], b[1] - a[1]);
}
