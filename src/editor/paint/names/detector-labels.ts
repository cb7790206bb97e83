import { TONE_WORD } from '../../../../geometry/messages/index.ts';
import type { Detector, XY } from '../../../../geometry/plan/model.ts';
import { inked, linesPart } from '../../../drawing/display-list.ts';
import { slotPart } from '../../../drawing/labels/slot.ts';
import type { TagPlace } from '../../../drawing/labels/tags.ts';
import { type Drawn, type TextStyle, textAt } from '../../../drawing/text.ts';
import { type Pen, px } from '../pen.ts';
import { READ } from '../text.ts';

/** Free ground about the letters, px. */
const AIR_PX = 4;
const STYLE: TextStyle = { ...READ, color: 'ink', halo: 'paper' };
const TONE_WORDS = Object.values(TONE_WORD);

const widthOf = ({ measure }: Pen, text: string) => measure(text, STYLE) + AIR_PX;

/** Wide enough for label and every verdict's word, so that it stands still when the verdict turns; and for the label alone. Plan mm. */
export function labelWidths(pen: Pen, { label }: Detector): readonly number[] {
  const widest = Math.max(...TONE_WORDS.map((word) => widthOf(pen, `${label} ${word}`)));
  return [widest, widthOf(pen, label)].map((width) => width / pen.view.scale);
}

/** @param place goes along with a disc that glides */
export function detectorLabel(pen: Pen, { at, label }: Detector, word: string, place: TagPlace): Drawn {
  const { slot, side, form, leader, plate } = place;
  const along = ([x, y]: XY): XY => px(pen, [x + at[0] - place.at[0], y + at[1] - place.at[1]]);
  const text = form === 0 && word ? `${label} ${word}`.trim() : label;
  // Up to the disc, and no wider than the text: bare paper beside it would read as floor that is allowed.
  const width = widthOf(pen, text);
  const [x, y] = along([slot.x, slot.y]);
  const middle: XY = [x - (side * (slot.width * pen.view.scale - width)) / 2, y];
  const own = { x: middle[0], y, width, height: STYLE.size, turn: 0 };
  return {
    shapes: [
      ...(leader ? [inked({ line: 'leader', color: 'ink' }, linesPart([leader.map(along)]))] : []),
      ...(plate ? [inked({ fill: 'paper' }, slotPart(own))] : []),
    ],
    texts: [textAt(text, middle, STYLE)],
  };
}
