import type { LevelModel } from '../../../../geometry/level/types.ts';
import { TONE_WORD } from '../../../../geometry/messages/index.ts';
import type { Detector, XY } from '../../../../geometry/plan/model.ts';
import { linesPart } from '../../../drawing/display-list.ts';
import { slotPart } from '../../../drawing/labels/block.ts';
import type { TagPlace } from '../../../drawing/labels/tags.ts';
import type { Drawn } from '../../../drawing/text.ts';
import { type TextStyle, textAt } from '../../../drawing/text.ts';
import { type Pen, px } from '../pen.ts';
import { READ } from '../text.ts';

/** Free ground about the letters, px. */
const AIR_PX = 4;
const STYLE: TextStyle = { ...READ, color: 'ink', halo: 'paper' };
const TONE_WORDS = Object.values(TONE_WORD);

const widthOf = ({ measure }: Pen, text: string) => measure(text, STYLE) + AIR_PX;

/** Wide enough for label and every verdict's word, so that it stands still when the verdict turns; and for the label alone. */
export function labelWidths(pen: Pen, { label }: Detector): readonly number[] {
  return [Math.max(...TONE_WORDS.map((word) => widthOf(pen, `${label} ${word}`))), widthOf(pen, label)];
}

/** Places as measured from the disc: a label goes along with a disc that glides. */
export function placesFromDiscs(
  pen: Pen,
  { level }: LevelModel,
  tags: ReadonlyMap<string, TagPlace>,
): ReadonlyMap<string, TagPlace> {
  return new Map(
    level.detectors.flatMap(({ id, at }) => {
      const tag = tags.get(id);
      const [x, y] = px(pen, at);
      return tag ? [[id, moved(tag, [-x, -y])] as const] : [];
    }),
  );
}

function moved({ slot, leader, ...tag }: TagPlace, [dx, dy]: XY): TagPlace {
  const by = ([x, y]: XY): XY => [x + dx, y + dy];
  return {
    ...tag,
    slot: { ...slot, x: slot.x + dx, y: slot.y + dy },
    leader: leader && [by(leader[0]), by(leader[1])],
  };
}

/** @param place from the disc */
export function detectorLabel(pen: Pen, { at, label }: Detector, word: string, place: TagPlace): Drawn {
  const { slot, side, form, leader, plate } = moved(place, px(pen, at));
  const text = form === 0 && word ? `${label} ${word}`.trim() : label;
  // Up to the disc, and no wider than the text: bare paper beside it would read as floor that is allowed.
  const width = widthOf(pen, text);
  const own = { ...slot, x: slot.x - (side * (slot.width - width)) / 2, width, height: STYLE.size };
  return {
    shapes: [
      ...(leader ? [{ ink: { line: 'leader', color: 'ink' }, parts: [linesPart([leader])] } as const] : []),
      ...(plate ? [{ ink: { fill: 'paper' }, parts: [slotPart(own)] } as const] : []),
    ],
    texts: [textAt(text, [own.x, own.y], STYLE)],
  };
}
