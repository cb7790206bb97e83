import type { LevelModel } from '../../../../geometry/level/types.ts';
import { TONE_WORD } from '../../../../geometry/messages/index.ts';
import type { Detector, XY } from '../../../../geometry/plan/model.ts';
import type { Line } from '../../../../geometry/plane/types.ts';
import { linesPart, ringsPart } from '../../../drawing/display-list.ts';
import { slotCorners } from '../../../drawing/labels/placer.ts';
import type { TagPlace } from '../../../drawing/labels/tags.ts';
import { paintLaidShapes } from '../canvas.ts';
import { type Pen, px } from '../pen.ts';
import { drawText, READ, type TextStyle, textWidth } from '../text.ts';

/** Where a detector's label stands, as measured from its disc: it goes along with a disc that glides. */
export interface LabelPlace {
  readonly off: XY;
  /** Which way from the disc, so that the text begins or ends at it: -1 left, 0 above or below, 1 right. */
  readonly side: -1 | 0 | 1;
  readonly width: number;
  /** Whether there is room for the verdict's word beside the label. */
  readonly full: boolean;
  /** From the disc's rim to the label, where another disc is nearer. */
  readonly leader: Line | null;
  /** Whether lines lie under it that its ground must hide. */
  readonly plate: boolean;
}

/** Free ground about the letters, px. */
const AIR_PX = 4;
const TONE_WORDS = Object.values(TONE_WORD);

const styleOn = ({ theme }: Pen): TextStyle => ({ ...READ, color: theme.ink, halo: theme.paper });

/** Wide enough for label and every verdict's word, so that it stands still when the verdict turns; and for the label alone. */
export function labelWidths(pen: Pen, { label }: Detector): readonly number[] {
  const style = styleOn(pen);
  const texts = TONE_WORDS.map((word) => `${label} ${word}`);
  return [Math.max(...texts.map((text) => textWidth(pen, text, style))), textWidth(pen, label, style)].map(
    (width) => width + AIR_PX,
  );
}

export function labelPlaces(
  pen: Pen,
  { level }: LevelModel,
  tags: ReadonlyMap<string, TagPlace>,
): ReadonlyMap<string, LabelPlace> {
  return new Map(
    level.detectors.flatMap(({ id, at }) => {
      const tag = tags.get(id);
      if (!tag) return [];
      const [x, y] = px(pen, at);
      const { slot, side, form, plate } = tag;
      const off = ([px, py]: XY): XY => [px - x, py - y];
      const leader: Line | null = tag.leader && [off(tag.leader[0]), off(tag.leader[1])];
      return [[id, { off: off([slot.x, slot.y]), side, width: slot.width, full: form === 0, leader, plate }] as const];
    }),
  );
}

export function writeLabel(pen: Pen, { at, label }: Detector, word: string, place: LabelPlace): void {
  const [x, y] = px(pen, at);
  const style = styleOn(pen);
  const text = place.full && word ? `${label} ${word}`.trim() : label;
  // Drawn up to the disc: the place may be wider than this verdict's word.
  const width = textWidth(pen, text, style) + AIR_PX;
  const slack = (place.side * (place.width - width)) / 2;
  if (place.leader) {
    const line = place.leader.map(([dx, dy]): XY => [x + dx, y + dy]);
    paintLaidShapes(pen, [{ ink: { line: 'leader', color: 'ink' }, parts: [linesPart([line])] }]);
  }
  if (place.plate) {
    // No wider than the text: bare paper beside it would read as floor that is allowed.
    const slot = { x: x + place.off[0] - slack, y: y + place.off[1], width, height: style.sizePx, turn: 0 };
    paintLaidShapes(pen, [{ ink: { fill: 'paper' }, parts: [ringsPart([slotCorners(slot)])] }]);
  }
  drawText(pen, text, [x + place.off[0] - slack, y + place.off[1]], style);
}
