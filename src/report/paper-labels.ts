/** The labels of a plan on paper: what they are laid out for, and how they are drawn. */
import type { DetectorReport } from '../../geometry/check/types.ts';
import { headlineText, toneOf } from '../../geometry/messages/index.ts';
import type { Detector, XY } from '../../geometry/plan/model.ts';
import type { Shape } from '../drawing/display-list.ts';
import { linesPart } from '../drawing/display-list.ts';
import { slotPart } from '../drawing/labels/block.ts';
import type { Label, LabelMedium } from '../drawing/labels/medium.ts';
import type { TagPlace } from '../drawing/labels/tags.ts';
import { CAP_HEIGHT, type Text } from '../drawing/text.ts';
import type { Area } from './paper.ts';
import { DIMENSIONS_MM, SMALL_RATIO, TYPE_MM } from './style.ts';
import { num } from './svg.ts';
import { paperColor, svgShapes } from './svg-shapes.ts';
import { drawText, shortened, textWidth } from './text.ts';
import type { View } from './view.ts';

/** A longer label is shortened on the drawing; the tables have it whole. */
const LABEL_WIDTH = 24;
/** From the box's edge to the text, and between label and word, mm. */
const TAG = { pad: 1.1, gap: 1.2 } as const;

export function paperMedium({ scale: { ratio }, originX, originY }: View, area: Area): LabelMedium {
  return {
    scale: 1 / ratio,
    measure: (text, { size, bold }) => textWidth(text, { size, weight: bold ? 'bold' : 'regular' }),
    type: { fine: TYPE_MM.fine, small: TYPE_MM.small, tag: TYPE_MM.body * 1.5, name: TYPE_MM.lead },
    area: { ...area, x: area.x - originX, y: area.y - originY },
    isSmall: ratio > SMALL_RATIO,
    roomSizes: true,
    dimensions: { ...DIMENSIONS_MM, target: 0 },
    symbol: 1.5,
  };
}

export function drawLabels(view: View, labels: readonly Label[]): string {
  const texts = labels.flatMap((label) => label.texts);
  // All edges come before all letters, so that no line eats into the one above.
  const pass = (halo: boolean) => texts.map((text) => svgText(view, text, halo));
  return [
    svgShapes(
      laid(view),
      labels.flatMap(({ shapes }) => shapes),
    ),
    ...pass(true),
    ...pass(false),
  ].join('');
}

/** Of what is in mm of paper from the plan's origin. */
function laid(view: View): View {
  return { ...view, scale: { ratio: 1, words: '' } };
}

function svgText({ originX, originY }: View, { text, at, turn, style }: Text, halo: boolean): string {
  const { size, bold, color } = style;
  if (halo && !style.halo) return '';
  const [x, y] = [at[0] + originX, at[1] + originY];
  const more = turn === 0 ? {} : { transform: `rotate(${num(turn)} ${num(x)} ${num(y)})` };
  const look = { size, weight: bold ? 'bold' : 'regular', color: paperColor(color), anchor: 'middle', halo } as const;
  return drawText(x, y + (size * CAP_HEIGHT) / 2, text, look, more);
}

/** A detector's label and its verdict in words. */
function tagTexts(detector: Detector, report: DetectorReport) {
  const size = TYPE_MM.body;
  const label = shortened(detector.label.trim() || detector.id, LABEL_WIDTH, { size, weight: 'bold' });
  const word = headlineText(report);
  const [long, wide] = [textWidth(label, { size, weight: 'bold' }), textWidth(word, { size })];
  return { label, word, long, wide, width: long + wide + TAG.gap + 2 * TAG.pad };
}

export function tagWidth(detector: Detector, report: DetectorReport): number {
  return tagTexts(detector, report).width;
}

/** Label and verdict in a box, with the leader to where the detector stands. */
export function tagLabel(detector: Detector, report: DetectorReport, { slot, leader }: TagPlace): Label {
  const { label, word, long, wide } = tagTexts(detector, report);
  const tone = toneOf(report);
  const [left, right] = [slot.x - slot.width / 2 + TAG.pad, slot.x + slot.width / 2 - TAG.pad];
  const text = (words: string, x: number, bold: boolean): Text => ({
    text: words,
    at: [x, slot.y],
    turn: 0,
    style: { size: TYPE_MM.body, bold, color: bold ? 'ink' : tone },
  });
  const line: readonly XY[] = leader ?? [];
  const shapes: readonly Shape[] = [
    ...(leader ? [{ ink: { line: 'leader', color: tone }, parts: [linesPart([line])] } as const] : []),
    { ink: { fill: 'paper', line: 'tag', color: tone }, parts: [slotPart(slot)] },
  ];
  return { texts: [text(label, left + long / 2, true), text(word, right - wide / 2, false)], shapes, slots: [slot] };
}
