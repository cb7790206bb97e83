import { roomAt } from '../../../../geometry/check/room.ts';
import type { LevelModel } from '../../../../geometry/level/types.ts';
import { TONE_WORD } from '../../../../geometry/messages/index.ts';
import type { Detector, XY } from '../../../../geometry/plan/model.ts';
import { ringsContain } from '../../../../geometry/plane/ring.ts';
import { toPlan } from '../../../state/viewport.ts';
import { discRadius } from '../detectors.ts';
import { type Pen, px } from '../pen.ts';
import { drawText, READ, type TextStyle, textWidth } from '../text.ts';
import type { Places } from './places.ts';

/** Where a detector's label stands, as measured from its disc: it goes along with a disc that glides. */
export interface LabelPlace {
  readonly off: XY;
  /** Which way from the disc, so that the text begins or ends at it: -1 left, 0 above or below, 1 right. */
  readonly side: -1 | 0 | 1;
  readonly width: number;
  /** Whether there is room for the verdict's word beside the label. */
  readonly full: boolean;
}

const HEIGHT = 18;
/** From the disc's rim to the text, px. */
const OFF_PX = 8;
const TONE_WORDS = Object.values(TONE_WORD);

const styleOn = ({ theme }: Pen): TextStyle => ({ ...READ, colour: theme.ink, halo: theme.paper });

/**
 * Places for label and verdict word beside every disc, taken before any other name: in its own room where there is one, else the
 * label alone there, else wherever it is free. Wide enough for every verdict, so that a label stands still when its verdict turns.
 */
export function placeLabels(pen: Pen, model: LevelModel, places: Places): ReadonlyMap<string, LabelPlace> {
  const { detectors } = model.level;
  for (const { at } of detectors) places.keep(px(pen, at), 34, 34);
  return new Map(detectors.map((detector) => [detector.id, placeLabel(pen, model, detector, places)]));
}

function placeLabel(pen: Pen, model: LevelModel, detector: Detector, places: Places): LabelPlace {
  const [x, y] = px(pen, detector.at);
  const style = styleOn(pen);
  const long = Math.max(...TONE_WORDS.map((word) => textWidth(pen, `${detector.label} ${word}`, style))) + 4;
  const short = textWidth(pen, detector.label, style) + 4;
  const room = roomAt(model, detector.at);
  const atHome = (off: XY, width: number) =>
    [-0.5, 0.5].every(
      (share) => room && ringsContain(room.floorRings, toPlan(pen.view, [x + off[0] + share * width, y + off[1]])),
    );
  const all = [
    ...spotsFor(discRadius(pen, detector), long, true),
    ...spotsFor(discRadius(pen, detector), short, false),
  ];
  const inOrder = [...all.filter(({ off, width }) => atHome(off, width)), ...all];
  const free = inOrder.find(({ off, width }) => places.claim([x + off[0], y + off[1]], width, HEIGHT, true));
  return free ?? (all.at(-1) as LabelPlace);
}

function spotsFor(radius: number, width: number, full: boolean): readonly LabelPlace[] {
  const across = radius + width / 2 + OFF_PX;
  const down = radius + OFF_PX + HEIGHT / 2;
  return [
    { off: [across, 0], side: 1, width, full },
    { off: [-across, 0], side: -1, width, full },
    { off: [0, -down], side: 0, width, full },
    { off: [0, down], side: 0, width, full },
    { off: [width / 2, -down], side: 1, width, full },
    { off: [width / 2, down], side: 1, width, full },
    { off: [-width / 2, -down], side: -1, width, full },
    { off: [-width / 2, down], side: -1, width, full },
  ];
}

export function writeLabel(pen: Pen, { at, label }: Detector, word: string, place: LabelPlace): void {
  const [x, y] = px(pen, at);
  const style = styleOn(pen);
  const text = place.full && word ? `${label} ${word}`.trim() : label;
  // Drawn up to the disc: the place may be wider than this verdict's word.
  const slack = (place.side * (place.width - 4 - textWidth(pen, text, style))) / 2;
  drawText(pen, text, [x + place.off[0] - slack, y + place.off[1]], style);
}
