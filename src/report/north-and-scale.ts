/** Scale bar and north arrow, side by side under the drawing. */
import type { LengthUnit } from '../../geometry/units/index.ts';
import type { Area } from './paper.ts';
import { barParts, type DrawingScale } from './scale.ts';
import { COLOR, LINE_MM, TYPE_MM } from './style.ts';
import { element, group, num, rectElement } from './svg.ts';
import { drawText } from './text.ts';

/** Height that both need, mm. */
export const STRIP_MM = 14;
const BAR_WIDTH = 70;
const BAR_HEIGHT = 1.6;

/** @param north degrees clockwise from straight up the page; null where it is not given, which the strip then says */
export function drawStrip(
  { x, y, width, height }: Area,
  scale: DrawingScale,
  unit: LengthUnit,
  north: number | null,
): string {
  const bar = drawBar(x + 6, y + height - 5, scale, unit);
  if (north !== null) return bar + drawNorth(x + width - 11, y + height / 2, north);
  return bar + drawText(x + width - 6, y + height / 2 + 1, 'North not given', { size: TYPE_MM.small, anchor: 'end' });
}

/** The bar is right at any size of print; the scale in words only at the paper's full size. */
function drawBar(x: number, y: number, scale: DrawingScale, unit: LengthUnit): string {
  const { part, labels } = barParts(scale, BAR_WIDTH, unit);
  const step = part / scale.ratio;
  const box = { stroke: COLOR.ink, 'stroke-width': LINE_MM.box };
  const parts = labels
    .slice(1)
    .map((_, i) =>
      rectElement(x + i * step, y, step, BAR_HEIGHT, { ...box, fill: i % 2 === 0 ? COLOR.ink : COLOR.paper }),
    );
  const marks = labels.map((label, i) =>
    drawText(x + i * step, y - 1, label, { size: TYPE_MM.small, anchor: i === 0 ? 'start' : 'middle' }),
  );
  const ratio = scale.words.startsWith('1:') ? '' : ` (1:${scale.ratio})`;
  const words = `Scale ${scale.words}${ratio} at the full size of the paper`;
  return group({}, ...parts, ...marks, drawText(x + 4 * step + 6, y + BAR_HEIGHT, words, { size: TYPE_MM.small }));
}

/** @param north degrees clockwise from straight up the page */
function drawNorth(x: number, y: number, north: number): string {
  const style = { stroke: COLOR.ink, 'stroke-width': LINE_MM.box, 'stroke-linejoin': 'round' };
  const turn = (north * Math.PI) / 180;
  const [ux, uy] = [Math.sin(turn), -Math.cos(turn)];
  return group(
    {},
    group(
      { transform: `translate(${num(x)} ${num(y)}) rotate(${num(north)})` },
      element('path', { d: 'M0 -4.6L-2 3.4L0 1.9Z', fill: COLOR.ink, ...style }),
      element('path', { d: 'M0 -4.6L2 3.4L0 1.9Z', fill: COLOR.paper, ...style }),
    ),
    drawText(x + ux * 6.1, y + uy * 6.1 + 1, 'N', { size: TYPE_MM.lead, weight: 'bold', anchor: 'middle' }),
  );
}
