import type { ShownHandle } from '../../../geometry/edit/spread-handles.ts';
import type { Level, Mm, Plan, XY } from '../../../geometry/plan/model.ts';
import { along, distance } from '../../../geometry/plane/point.ts';
import type { Line } from '../../../geometry/plane/types.ts';
import { jambCorners } from '../../../geometry/snap/opening-symbol.ts';
import { formatMeasured } from '../../../geometry/units/index.ts';
import {
  casedLine,
  crossPart,
  discsPart,
  inked,
  linesPart,
  ringsPart,
  type Shape,
} from '../../drawing/display-list.ts';
import type { Ink } from '../../drawing/inks.ts';
import { dimensionLine } from '../../drawing/labels/dimensions.ts';
import { slotAt, slotPart, turnAlong, turned } from '../../drawing/labels/slot.ts';
import { type Drawn, type Text, textAt } from '../../drawing/text.ts';
import { outlinePart } from '../../drawing/things.ts';
import { LINE_PX } from '../../theme/tokens.ts';
import type { Sketch } from '../overlay/sketch.ts';
import { FINE, READ } from './text.ts';

/** What is being drawn and is not in the plan yet. Shapes and places of texts are in plan mm; `mm` is the length of a screen px. */

const GRIP_PX = 5;
const OFF_WALL_PX = 12;
/** Where the arms of the keyboard's cross begin and end, px. */
const CROSS_PX = { from: 6, to: 26 } as const;
const EDGE: Ink = { line: LINE_PX.detector, color: 'accent' };
const LEADER: Ink = { line: 1, color: 'accent' };
const ON_PAPER: Ink = { ...EDGE, fill: 'paper' };

/**
 * Returns squares for handles at corners and ends, discs for those of turns and rims, and leaders for handles that are shown beside their
 * point.
 */
export function handleShapes(handles: readonly ShownHandle[], mm: Mm): readonly Shape[] {
  const side = 2 * GRIP_PX * mm;
  const aside = handles.filter(({ at, shownAt }) => distance(at, shownAt) > mm);
  const leaders: Shape = { ink: LEADER, parts: [linesPart(aside.map(({ at, shownAt }) => [at, shownAt]))] };
  const grips = handles.map(({ kind, shownAt }): Shape => {
    const isRound = kind === 'turn' || kind === 'radius' || kind === 'stream';
    const square = slotPart(slotAt({ width: side, height: side }, shownAt));
    return { ink: ON_PAPER, parts: [isRound ? discsPart([shownAt], (GRIP_PX + 1) * mm) : square] };
  });
  return aside.length > 0 ? [leaders, ...grips] : grips;
}

/** The walls that are being drawn one after another: their corners and the next one. */
export interface DrawnChain {
  readonly points: readonly XY[];
  readonly next: XY | null;
  readonly thickness: Mm;
}

/** Returns the shapes and texts of what is being drawn. @param unit null for lines without their lengths */
export function drawnSketch(
  { guides, box, opening, previewShape, previewName, gaps, marquee, cross }: Sketch,
  chain: DrawnChain | null,
  level: Level,
  unit: Plan['display']['length'] | null,
  mm: Mm,
): Drawn {
  const outline = previewShape && outlinePart(previewShape);
  const accent = { color: 'accent', halo: 'paper' } as const;
  const shapes: readonly (readonly Shape[] | null)[] = [
    [inked({ line: 1, color: 'accent', dash: [2, 4] }, linesPart(guides))],
    chain && chainShapes(chain, mm),
    // The floor of the room that is being drawn, face to face.
    box && boxShapes(box, { fill: 'paper', opacity: 0.8 }, EDGE),
    opening && openingPreview(opening, level, mm),
    outline && [
      inked({ fill: 'fixtureFill', opacity: 0.7 }, outline),
      inked({ line: 'fixture', color: 'accent', dash: 'overhead' }, outline),
    ],
    gaps.map(([from, to]) => dimensionLine(from, to, FINE.size * mm)),
    marquee && boxShapes(marquee, { fill: 'accent', opacity: 0.08 }, { line: 1, color: 'accent', dash: [6, 4] }),
    cross && casedLine(crossPart(cross, CROSS_PX.from * mm, CROSS_PX.to * mm), LINE_PX.detector, 'accent', 2.5),
  ];
  const texts = [
    previewName && textAt(previewName.name, previewName.at, { ...READ, size: READ.size * mm, ...accent }),
    ...(unit ? gaps.map((gap) => gapText(gap, unit, mm)) : []),
  ];
  return { shapes: shapes.flatMap((some) => some ?? []), texts: texts.filter((text) => text !== null) };
}

/** A rectangle between opposite corners: a translucent fill and its edge. */
function boxShapes([a, b]: Line, ground: Ink, edge: Ink): readonly Shape[] {
  const ring = ringsPart([[a, [b[0], a[1]], b, [a[0], b[1]]]]);
  return [inked(ground, ring), inked(edge, ring)];
}

/**
 * The walls in their thickness, translucent, with the next one and their corners; the first corner is larger once a press on it closes the
 * room.
 */
function chainShapes({ points, next, thickness }: DrawnChain, mm: Mm): readonly Shape[] {
  const corners = next ? [...points, next] : points;
  const line = linesPart([corners]);
  return [
    inked({ line: Math.max(3, thickness / mm), color: 'poche', opacity: 0.25 }, line),
    inked(EDGE, line),
    ...corners.map((corner, i) => inked(ON_PAPER, discsPart([corner], (i === 0 && points.length > 2 ? 8 : 4) * mm))),
  ];
}

/** The opening in its wall, and the two lengths that position it. */
function openingPreview(
  { opening, refusal, offsets }: NonNullable<Sketch['opening']>,
  level: Level,
  mm: Mm,
): readonly Shape[] {
  const corners = jambCorners(level, { id: '', ...opening });
  if (!corners) return [];
  const { near, far } = corners;
  const body = ringsPart([[near[0], far[0], far[1], near[1]]]);
  if (refusal) return [inked({ ...ON_PAPER, color: 'blocked', dash: [4, 3] }, body)];
  // Lines beside the wall, on the side from which the lengths are taped.
  const middle = along(near[0], near[1], 0.5);
  const share = (OFF_WALL_PX * mm) / (distance(middle, offsets[0][1]) || 1);
  const [dx, dy] = [(offsets[0][1][0] - middle[0]) * share, (offsets[0][1][1] - middle[1]) * share];
  const off = ([x, y]: XY): XY => [x + dx, y + dy];
  return [inked(ON_PAPER, body), ...offsets.map(([from, to]) => dimensionLine(off(from), off(to), FINE.size * mm))];
}

/** Approximate width of a letter, as a multiple of the type size. */
const LETTER = 0.6;

/** The length on its dimension line, or above a line that is shorter than the text. */
function gapText([from, to]: Line, unit: Plan['display']['length'], mm: Mm): Text {
  const style = { size: FINE.size * mm, bold: true, color: 'dimension', halo: 'paper' } as const;
  const words = formatMeasured(distance(from, to), unit);
  const [turn, [x, y]] = [turnAlong(from, to), along(from, to, 0.5)];
  const isShort = distance(from, to) < (words.length * LETTER + 1) * style.size;
  const [dx, dy] = turned([0, isShort ? -1.2 * style.size : 0], turn);
  return textAt(words, [x + dx, y + dy], style, turn);
}
