import type { Check, DetectorReport } from '../../../geometry/check/types.ts';
import { TONE_WORD, toneOf } from '../../../geometry/messages/index.ts';
import type { Detector, XY } from '../../../geometry/plan/model.ts';
import { distance, along as onLine } from '../../../geometry/plane/point.ts';
import type { Disc, DiscSizes } from '../../drawing/discs-apart.ts';
import { discsPart, inked, linesPart, type Shape } from '../../drawing/display-list.ts';
import { plateLabel } from '../../drawing/labels/label.ts';
import { figureLeader, figureSlots, tape } from '../../drawing/labels/measured.ts';
import { edgeToward, slotPart } from '../../drawing/labels/slot.ts';
import type { TagPlace } from '../../drawing/labels/tags.ts';
import { type Drawn, type TextStyle, textAt } from '../../drawing/text.ts';
import { verdictSign } from '../../drawing/verdict-sign.ts';
import { LINE_PX } from '../../theme/tokens.ts';
import type { OverlayPlacer } from './names/overlay-placer.ts';
import { type Pen, px } from './pen.ts';
import { FINE, READ } from './text.ts';

export interface DrawnDetector {
  readonly detector: Detector;
  readonly report: DetectorReport | null;
  readonly chosen: boolean;
}

/**
 * Least radius of a detector's symbol, px: `single`, so that it is found at arm's length; `pair` beside another one. The gap leaves space
 * for the ring of a selected one.
 */
export const SYMBOL_PX: DiscSizes = { single: 11, pair: 8, gap: 8 };
/** Distances beyond the radius at which the sign and the middle of the ring of a selected one are drawn, px. */
export const BEYOND_PX = { sign: 1.3, ring: 4 } as const;
/** A symbol that is drawn at least this far from its place has a line to it, px. */
const ASIDE_PX = 3;

/** Returns a disc with the sign of the verdict for each detector, drawn at `discs`. Rings of selected detectors are below all signs. */
export function detectorShapes(
  pen: Pen,
  detectors: readonly DrawnDetector[],
  discs: readonly Disc[],
): readonly Shape[] {
  const drawn = detectors.flatMap((each, index) => {
    const disc = discs[index];
    return disc ? [{ ...each, ...disc, place: px(pen, each.detector.at) }] : [];
  });
  const signs = drawn.map(({ at, radius, report }) => [
    inked({ fill: 'paper' }, discsPart([at], radius + 2)),
    ...verdictSign(report ? toneOf(report) : 'unknown', at, radius + BEYOND_PX.sign),
  ]);
  const rings = drawn
    .filter(({ chosen }) => chosen)
    .map(({ at, radius }) =>
      inked({ line: LINE_PX.detector, color: 'accent' }, discsPart([at], radius + BEYOND_PX.ring)),
    );
  // A dot at the real place, over the signs, with a line to it.
  const places = drawn
    .filter(({ at, place }) => distance(at, place) >= ASIDE_PX)
    .flatMap(({ at, place }) => [
      inked({ line: 'leader', color: 'ink' }, linesPart([[at, place]])),
      inked({ fill: 'ink' }, discsPart([place], 2)),
    ]);
  return [...rings, ...signs.flat(), ...places];
}

/** Returns the lines that a tester would tape: from the rim to each subject near its limit, with its length. */
export function drawnMeasures(
  pen: Pen,
  checks: readonly Check[],
  words: (check: Check) => string,
  placer: OverlayPlacer,
): readonly Drawn[] {
  return checks.flatMap((check) => {
    if (!check.witness) return [];
    const { verdict: color, witness } = check;
    const [a, b] = [px(pen, witness.rim), px(pen, witness.subject)];
    const line = tape(a, b, FINE.size, color);
    const text = words(check);
    const style = { ...FINE, bold: true, color };
    const slot = placer.claim(figureSlots([a, b], pen.measure(text, style) + 10, style.size + 7));
    const casing: Shape = { ...line, ink: { line: LINE_PX.dimension * 4, color: 'paper' } };
    const figure = slot ? [plateLabel(text, style, slot, { fill: 'paper', line: 0.75, color })] : [];
    const leader = slot ? figureLeader([a, b], slot, color) : [];
    return [{ shapes: [casing, line, ...leader], texts: [] }, ...figure];
  });
}

/** Added to the width of the letters as a margin, px. */
const AIR_PX = 4;
const STYLE: TextStyle = { ...READ, color: 'ink', halo: 'paper' };
const TONE_WORDS = Object.values(TONE_WORD);

const widthOf = ({ measure }: Pen, text: string) => measure(text, STYLE) + AIR_PX;

/**
 * Returns the width for the label with the word of any verdict, so that the tag does not move when the verdict changes, and the width for
 * the label alone. Plan mm.
 */
export function labelWidths(pen: Pen, { label }: Detector): readonly number[] {
  const widest = Math.max(...TONE_WORDS.map((word) => widthOf(pen, `${label} ${word}`)));
  return [widest, widthOf(pen, label)].map((width) => width / pen.view.scale);
}

/** Returns the tag of a detector. @param place moves with a detector whose move is animated @param disc its symbol as drawn */
export function detectorLabel(pen: Pen, { at, label }: Detector, word: string, place: TagPlace, disc: Disc): Drawn {
  const { slot, side, form, leader, plate } = place;
  const along = ([x, y]: XY): XY => px(pen, [x + at[0] - place.at[0], y + at[1] - place.at[1]]);
  const text = form === 0 && word ? `${label} ${word}`.trim() : label;
  // Next to the disc, and no wider than the text: bare paper beside the text would read as floor that is allowed.
  const width = widthOf(pen, text);
  const [x, y] = along([slot.x, slot.y]);
  const middle: XY = [x - (side * (slot.width * pen.view.scale - width)) / 2, y];
  const own = { x: middle[0], y, width, height: STYLE.size, turn: 0 };
  // The slot has space for any verdict's word; the leader ends at the actual text.
  const end = edgeToward(own, disc.at);
  const rim = leader && onLine(disc.at, end, Math.min(1, (disc.radius + 2) / (distance(disc.at, end) || 1)));
  return {
    shapes: [
      ...(rim ? [inked({ line: 'leader', color: 'ink' }, linesPart([[rim, end]]))] : []),
      ...(plate ? [inked({ fill: 'paper' }, slotPart(own))] : []),
    ],
    texts: [textAt(text, middle, STYLE)],
  };
}
