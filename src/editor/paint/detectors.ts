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
 * A detector is never drawn smaller than `single`, px, so that it is found at arm's length; side by side with another one `pair`. The gap holds
 * the ring of a chosen one.
 */
export const SYMBOL_PX: DiscSizes = { single: 11, pair: 8, gap: 8 };
/** How far beyond the radius the sign is drawn, and the middle of the ring of a chosen one, px. */
export const BEYOND_PX = { sign: 1.3, ring: 4 } as const;
/** From this far on, px, a symbol that is drawn beside its place has a line to it. */
const ASIDE_PX = 3;

/** A disc with the sign of its verdict for each: `discs` are where they are drawn. Rings of those that are chosen lie below all signs. */
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
  // Where it stands, on top of its sign, with a line to it.
  const places = drawn
    .filter(({ at, place }) => distance(at, place) >= ASIDE_PX)
    .flatMap(({ at, place }) => [
      inked({ line: 'leader', color: 'ink' }, linesPart([[at, place]])),
      inked({ fill: 'ink' }, discsPart([place], 2)),
    ]);
  return [...rings, ...signs.flat(), ...places];
}

/** The lines that a tester would tape: from the rim to each subject near its limit, with the length on it. */
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

/** @param disc its symbol as it is drawn @param place goes along with a disc that glides */
export function detectorLabel(pen: Pen, { at, label }: Detector, word: string, place: TagPlace, disc: Disc): Drawn {
  const { slot, side, form, leader, plate } = place;
  const along = ([x, y]: XY): XY => px(pen, [x + at[0] - place.at[0], y + at[1] - place.at[1]]);
  const text = form === 0 && word ? `${label} ${word}`.trim() : label;
  // Up to the disc, and no wider than the text: bare paper beside it would read as floor that is allowed.
  const width = widthOf(pen, text);
  const [x, y] = along([slot.x, slot.y]);
  const middle: XY = [x - (side * (slot.width * pen.view.scale - width)) / 2, y];
  const own = { x: middle[0], y, width, height: STYLE.size, turn: 0 };
  // The place holds every verdict's word; the leader goes to the words that stand there.
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
