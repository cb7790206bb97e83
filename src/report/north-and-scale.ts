/** Scale bar and north arrow, side by side under the drawing. */
import { counted } from '../../geometry/messages/index.ts';
import { formatMeasured, type LengthUnit } from '../../geometry/units/index.ts';
import { paragraph } from './block.ts';
import type { Area } from './paper.ts';
import { barParts, type DrawingScale } from './scale.ts';
import { COLOR, LINE_MM, TYPE_MM } from './style.ts';
import { element, group, num, rectElement } from './svg.ts';
import { drawText } from './text.ts';

/** Height of the strip with both, mm. */
export const STRIP_MM = 14;
const BAR_WIDTH = 70;
/** Width for the north arrow or the words that replace it, mm. */
const BESIDE_BAR = 26;
const BAR_HEIGHT = 1.6;

export interface StripFacts {
  readonly scale: DrawingScale;
  readonly unit: LengthUnit;
  /** Height from floor to ceiling, mm; null if not measured, which the strip then says. */
  readonly ceiling: number | null;
  /** Number of walls whose thickness is not measured, which the strip then says. */
  readonly unmeasuredWalls: number;
  /** Degrees clockwise from straight up the page; null if not given, which the strip then says. */
  readonly north: number | null;
}

export function drawStrip({ x, y, width, height }: Area, facts: StripFacts): string {
  const { north } = facts;
  const bar = drawBar(x + 6, y, width - 6 - BESIDE_BAR, facts);
  if (north !== null) return bar + drawNorth(x + width - 11, y + height / 2, north);
  return bar + drawText(x + width - 6, y + height / 2 + 1, 'North not given', { size: TYPE_MM.small, anchor: 'end' });
}

/** The bar is right at any print size; the scale in words only if the sheet is printed at full size. */
function drawBar(x: number, y: number, width: number, { scale, unit, ceiling, unmeasuredWalls }: StripFacts): string {
  const { part, labels } = barParts(scale, Math.min(BAR_WIDTH, width), unit);
  const step = part / scale.ratio;
  const box = { stroke: COLOR.ink, 'stroke-width': LINE_MM.box };
  const parts = labels
    .slice(1)
    .map((_, i) =>
      rectElement(x + i * step, y + 9, step, BAR_HEIGHT, { ...box, fill: i % 2 === 0 ? COLOR.ink : COLOR.paper }),
    );
  const marks = labels.map((label, i) =>
    drawText(x + i * step, y + 8, label, { size: TYPE_MM.small, anchor: i === 0 ? 'start' : 'middle' }),
  );
  const ratio = scale.words.startsWith('1:') ? '' : ` (1:${scale.ratio})`;
  const height = ceiling === null ? 'not measured' : `${formatMeasured(ceiling, unit)} above the floor`;
  const thick = unmeasuredWalls > 0 ? ` Thickness of ${counted(unmeasuredWalls, 'wall')} not measured.` : '';
  const words = `Scale ${scale.words}${ratio} at the full size of the paper. Ceiling ${height}.${thick}`;
  const style = { size: TYPE_MM.small };
  return group({}, ...parts, ...marks, paragraph(words, width, style).draw(x, y + 3.4 - style.size * 0.95));
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
