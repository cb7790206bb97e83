import type { Check } from '../../../geometry/check/types.ts';
import type { XY } from '../../../geometry/plan/model.ts';
import { along, distance } from '../../../geometry/plane/point.ts';
import type { Line } from '../../../geometry/plane/types.ts';
import { casedLine, crossPart, discsPart, inked, linesPart, type Shape } from '../../drawing/display-list.ts';
import { plateLabel } from '../../drawing/labels/label.ts';
import { edgeToward, pairs, type Slot, slotAt } from '../../drawing/labels/slot.ts';
import { type Drawn, textAt } from '../../drawing/text.ts';
import { type MarkedCorners, type SpotMark, useShown } from '../../state/shown.ts';
import { LINE_PX } from '../../theme/tokens.ts';
import { drawnMeasures } from './detectors.ts';
import type { OverlayPlacer } from './names/overlay-placer.ts';
import { lengthPx, type Pen, px } from './pen.ts';
import { FINE, READ } from './text.ts';

/** Arms of the cross that marks a good place, px. */
const ARM_PX = 10;
/** Offset of the tag with the name from the cross, its height and least width, px. */
const TAG_PX = { off: 15, height: 19, least: 19 } as const;
/** Multiples of the offset for places farther off. */
const FAR = [2, 3, 4] as const;
/** Greatest distance of a tag from its own cross, as a multiple of that to the nearest other cross. */
const OWN = 1.25;
/** At the corners, then beside, above and below. */
const DIRECTIONS = [...pairs([1, -1], [-1, 1]), ...pairs([1, -1], [0]), ...pairs([0], [-1, 1])];
/** Least radius of the ring of a highlighted place, px. */
const LEAST_RING_PX = 11;
/** Distance of the letter of a corner from it along its line, and radius of the letter's disc, px. */
const CORNER_PX = { inside: 26, disc: 12 } as const;
/** Widths of the paper-colored casing, as multiples of the line in it. */
const CASING = { wide: 3.5, narrow: 2.5 } as const;

/** Returns what the panels ask to be shown on the level in view: corners, the route of the air, then good places. */
export function drawnMarks(
  pen: Pen,
  levelId: string,
  words: (check: Check) => string,
  placer: OverlayPlacer,
): readonly Drawn[] {
  const { corners, air, group, spots, lit, ...shown } = useShown.getState();
  const isHere = shown.levelId === levelId;
  const chosen = group ?? spots.find(({ name }) => name === lit) ?? null;
  return [
    ...(corners?.levelId === levelId ? [drawnCorners(pen, corners)] : []),
    ...(isHere && air ? [drawnAir(pen, air, placer)] : []),
    ...(isHere ? drawnSpots(pen, group ? [...spots, group] : spots, chosen, words, placer) : []),
  ];
}

/** The lines to be taped from corners, which have letters: the diagonals of a room, or a length to a jamb. */
function drawnCorners(pen: Pen, { lines, letters }: MarkedCorners): Drawn {
  const taped = lines.map(([a, b]): Line => [px(pen, a), px(pen, b)]);
  const discs = [...taped, ...taped.map(([a, b]): Line => [b, a])]
    .slice(0, letters.length)
    .map(([from, to]) => along(from, to, Math.min(CORNER_PX.inside / distance(from, to), 1 / 3)));
  return {
    shapes: [
      ...casedLine(linesPart(taped), LINE_PX.dimension, 'accent', CASING.wide, [9, 5]),
      inked({ fill: 'accent' }, discsPart(discs, CORNER_PX.disc)),
    ],
    texts: discs.map((disc, i) => textAt(letters[i] ?? '', disc, { ...READ, color: 'onAccent' })),
  };
}

/** Good places as crosses with a tag; the highlighted one also with its rim and its measured line. */
function drawnSpots(
  pen: Pen,
  marks: readonly SpotMark[],
  lit: SpotMark | null,
  words: (check: Check) => string,
  placer: OverlayPlacer,
): readonly Drawn[] {
  const measures = lit?.limit ? drawnMeasures(pen, [lit.limit], words, placer) : [];
  const shown = lit ? [lit, ...marks.filter((mark) => mark !== lit)] : marks;
  const side = { width: 14, height: 14 };
  for (const { axes } of shown) for (const axis of axes) placer.take(slotAt(side, px(pen, axis)));
  const crosses = [...shown].reverse().flatMap((mark) => crossShapes(pen, mark, mark === lit));
  // The tag of the highlighted one is placed first.
  return [
    ...measures,
    { shapes: crosses, texts: [] },
    ...shown.map((mark) => drawnTag(pen, mark, mark === lit, crossesBut(pen, mark, shown), placer)),
  ];
}

const crossesBut = (pen: Pen, mark: SpotMark, all: readonly SpotMark[]): readonly XY[] =>
  all.filter((each) => each !== mark).flatMap(({ axes }) => axes.map((axis) => px(pen, axis)));

function crossShapes(pen: Pen, { axes, radius }: SpotMark, lit: boolean): readonly Shape[] {
  const rim = { fill: 'paper', line: LINE_PX.detector, color: 'accent', dash: [4, 3] } as const;
  return axes.flatMap((axis) => {
    const at = px(pen, axis);
    const disc = discsPart([at], Math.max(LEAST_RING_PX, lengthPx(pen, radius)));
    const cross = casedLine(crossPart(at, 0, ARM_PX, Math.PI / 4), LINE_PX.detector, 'accent', CASING.narrow);
    return lit ? [inked(rim, disc), ...cross] : cross;
  });
}

/**
 * The name on a square tag beside the cross where no other text is; farther off with a leader if there is text all around.
 * @param others crosses of the other places, px: a tag farther off must not seem to belong to one of them
 */
function drawnTag(
  pen: Pen,
  { axes: [first = [0, 0]], name }: SpotMark,
  lit: boolean,
  others: readonly XY[],
  placer: OverlayPlacer,
): Drawn {
  const at = px(pen, first);
  const style = { ...FINE, bold: true, color: lit ? 'onAccent' : 'accent' } as const;
  const width = Math.max(TAG_PX.least, pen.measure(name, style) + 8);
  const [dx, dy] = [TAG_PX.off + width / 2 - 6, TAG_PX.off];
  const tagAt = (i: number, j: number) => slotAt({ width, height: TAG_PX.height }, [at[0] + i * dx, at[1] + j * dy]);
  const isOwn = ({ x, y }: Slot) => distance([x, y], at) < OWN * Math.min(...others.map((p) => distance([x, y], p)));
  const far = new Set<Slot>();
  function* places(): Generator<Slot> {
    for (const [i, j] of DIRECTIONS) yield tagAt(i, j);
    for (const times of FAR) {
      for (const [i, j] of DIRECTIONS) {
        const place = tagAt(times * i, times * j);
        if (!isOwn(place)) continue;
        far.add(place);
        yield place;
      }
    }
  }
  const slot = placer.claim(places()) ?? tagAt(1, -1);
  const tag = plateLabel(name, style, slot, { fill: lit ? 'accent' : 'paper', line: 1.25, color: 'accent' });
  if (!far.has(slot)) return tag;
  const leader = casedLine(linesPart([[at, edgeToward(slot, at)]]), LINE_PX.dimension, 'accent', CASING.wide);
  return { ...tag, shapes: [...leader, ...tag.shapes] };
}

/** The route of the air around the walls, with the word "air": thin and dashed, so that it is not taken for a measured line. */
function drawnAir(pen: Pen, points: readonly XY[], placer: OverlayPlacer): Drawn {
  const line = points.map((point) => px(pen, point));
  const style = { ...FINE, color: 'inkSoft', halo: 'paper' } as const;
  const size = { width: pen.measure('air', style) + 6, height: style.size + 4 };
  const stretches = line.slice(1).map((b, i): Line => [line[i] ?? b, b]);
  const longestFirst = stretches.sort((one, other) => distance(...other) - distance(...one));
  const slots = longestFirst.map(([a, b]) => slotAt(size, along(a, b, 0.5)));
  const slot = placer.claim(slots) ?? slots[0];
  return {
    shapes: casedLine(linesPart([line]), LINE_PX.dimension, 'inkSoft', CASING.wide, [7, 5]),
    texts: slot ? [textAt('air', [slot.x, slot.y], style)] : [],
  };
}
