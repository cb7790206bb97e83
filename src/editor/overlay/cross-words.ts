import { wordsOf, wrapWords } from '../../drawing/labels/label.ts';
import { type Slot, slotAt } from '../../drawing/labels/slot.ts';
import { type Drawn, textAt } from '../../drawing/text.ts';
import { TYPE_PX } from '../../theme/tokens.ts';
import { enterWords } from '../input/enter-words.ts';
import { useLengths } from '../lengths/store.ts';
import { notePlace } from '../paint/note.ts';
import { type Pen, px } from '../paint/pen.ts';
import type { OverlayScene } from './overlay-scene.ts';

const STYLE = { size: TYPE_PX.small, color: 'accent', halo: 'paper' } as const;
const LINE_PX = TYPE_PX.small + 5;
/** A longer line is broken between words. */
const WIDEST_PX = 250;
/** Distances from the cross that are tried, px, in small steps: a line of words fits between labels where a card does not. */
const OFFS_PX = [22, 30, 38, 46, 54, 62, 72, 82, 92, 110, 130] as const;
/**
 * Weight of what these words cover, compared with a card: neither text could be read. If all places are taken, the words are in a corner.
 */
const HIDES = 1000;

/** Index of the place beside the cross that the words had last. */
let lastSide = -1;

/**
 * Returns the words for what Enter does at the keyboard's cross, placed beside it where they hide the least text, and takes their place;
 * null for none. Screen px.
 */
export function drawnCrossWords(pen: Pen, { state, sketch, placer }: OverlayScene): Drawn | null {
  // An open length box says it itself, and may be over the cross.
  const words = useLengths.getState().open ? '' : enterWords(state, sketch);
  if (!sketch.cross || !words) return null;
  const lines = wrapWords(wordsOf(words), WIDEST_PX, (line) => pen.measure(line, STYLE));
  const widths = lines.map((line) => pen.measure(line, STYLE));
  const size = { width: Math.max(...widths) + 8, height: lines.length * LINE_PX };
  const ground = { covered: (slot: Slot) => HIDES * placer.covered(slot) };
  const place = notePlace(px(pen, sketch.cross), size, state.stageSize, ground, lastSide, OFFS_PX);
  lastSide = place.side;
  const [left, top] = place.at;
  const x = left + size.width / 2;
  placer.take(slotAt(size, [x, top + size.height / 2]));
  return { shapes: [], texts: lines.map((line, i) => textAt(line, [x, top + (i + 0.5) * LINE_PX], STYLE)) };
}
