/** Finds problems of the labels of a plan with separate geometry, independent of the placer. */
import type { LevelModel, Room } from '../../geometry/level/types.ts';
import type { Detector, XY } from '../../geometry/plan/model.ts';
import { shapeMiddle, shapeRing } from '../../geometry/plane/body.ts';
import { ringExtent } from '../../geometry/plane/extent.ts';
import { memoize } from '../../geometry/plane/memoize.ts';
import { doorSwing } from '../../geometry/snap/opening-symbol.ts';
import type { Part } from '../../src/drawing/display-list.ts';
import type { Label, LabelMedium } from '../../src/drawing/labels/label.ts';
import type { Labels } from '../../src/drawing/labels/layout.ts';
import { symbolRadius } from '../../src/drawing/labels/tags.ts';
import { CAP_HEIGHT, type Text } from '../../src/drawing/text.ts';

type Segment = readonly [XY, XY];
type Box = readonly XY[];
interface Written {
  readonly what: string;
  readonly box: Box;
}

export function labelTroubles(model: LevelModel, labels: Labels, medium: LabelMedium): readonly string[] {
  const { tags, measured, taped, rooms, things, zones, dimensions } = labels;
  const all: readonly Label[] = [...measured, ...taped, ...rooms, ...things, ...zones, ...dimensions];
  const tagBoxes = [...tags].map(
    ([id, { slot }]): Written => ({ what: `tag ${id}`, box: boxAt([slot.x, slot.y], slot.width, slot.height, 0) }),
  );
  const textBoxes = (label: Label) =>
    label.texts.map((text): Written => ({ what: text.text, box: textBox(text, medium) }));
  const texts = [...tagBoxes, ...all.flatMap(textBoxes)];
  const lines: readonly Segment[] = [
    ...all.flatMap(({ shapes }) =>
      shapes.filter(({ ink }) => ink.line).flatMap(({ parts }) => parts.flatMap(segmentsOf)),
    ),
    ...[...tags.values()].flatMap(({ leader }): readonly Segment[] => (leader ? [leader] : [])),
  ];
  // A filled ground hides what is drawn below.
  const isPlate = ({ shapes }: Label) => shapes.some(({ ink }) => ink.fill && !ink.line && ink.fill !== 'inkSoft');
  const bare = [
    ...tagBoxes.filter(({ what }) => !tags.get(what.slice(4))?.plate),
    ...all.filter((label) => !isPlate(label)).flatMap(textBoxes),
  ];
  const drawn = drawnSegments(model);
  const outlines = outlineSegments(model);
  return [
    ...overlaps(texts).map((pair) => `over one another: ${pair}`),
    ...struck(texts, lines).map((what) => `crossed by a line: ${what}`),
    ...struck(bare, drawn).map((what) => `crossed by a wall or opening: ${what}`),
    ...struck(bare, outlines).map((what) => `crossed by an outline: ${what}`),
    ...struck(
      dimensions.map(({ texts: [text], shapes }) => ({
        what: text?.text ?? '',
        box: lineBox(segmentsOf(shapes.at(-1)?.parts[0])),
      })),
      [...outlines, ...drawn],
    ).map((what) => `dimension through something: ${what}`),
    ...rooms.flatMap((label) => outside(textBoxes(label), [label.region.room])),
    ...things.flatMap((label) => {
      const at = shapeMiddle(label.thing.shape);
      const home = model.rooms.filter(({ floorRings }) => holds(floorRings, at));
      // A label inside the outline of its thing is always in the right place.
      const inOwn = textBoxes(label).every(({ box }) => box.every((p) => holds([shapeRing(label.thing.shape)], p)));
      return inOwn ? [] : outside(textBoxes(label), home, model.rooms);
    }),
    ...model.level.detectors.flatMap((detector) => tagTroubles(detector, model, labels, medium)),
  ];
}

function tagTroubles(
  detector: Detector,
  { level }: LevelModel,
  { tags }: Labels,
  medium: LabelMedium,
): readonly string[] {
  const tag = tags.get(detector.id);
  if (!tag) return [`no tag: ${detector.id}`];
  const gap = ({ at }: Detector) => {
    const [x, y] = [at[0] - tag.slot.x, at[1] - tag.slot.y];
    return Math.hypot(Math.max(0, Math.abs(x) - tag.slot.width / 2), Math.max(0, Math.abs(y) - tag.slot.height / 2));
  };
  const near = level.detectors.filter((other) => other !== detector && gap(other) <= gap(detector));
  const over = level.detectors.filter((other) => gap(other) < symbolRadius(other, medium) * 0.9);
  return [
    ...(near.length > 0 && !tag.leader ? [`tag nearer to ${near.map(({ id }) => id)}: ${detector.id}`] : []),
    ...over.map(({ id }) => `tag of ${detector.id} over ${id}`),
  ];
}

function overlaps(texts: readonly Written[]): readonly string[] {
  return texts.flatMap((a, i) =>
    texts.slice(i + 1).flatMap((b) => (meet(a.box, b.box) ? [`${a.what} | ${b.what}`] : [])),
  );
}

function struck(texts: readonly Written[], lines: readonly Segment[]): readonly string[] {
  return texts.filter(({ box }) => lines.some((line) => meet(box, line))).map(({ what }) => what);
}

function outside(texts: readonly Written[], home: readonly Room[], others: readonly Room[] = []): readonly string[] {
  const isHome = (p: XY) => {
    if (home.length > 0) return home.some(({ floorRings }) => holds(floorRings, p));
    return !others.some(({ floorRings }) => holds(floorRings, p));
  };
  return texts.filter(({ box }) => !box.every(isHome)).map(({ what }) => `not in its room: ${what}`);
}

/** Chords of a quarter turn: they are within a thousandth of its radius. */
const SHARES = Array.from({ length: 20 }, (_, i) => i);

function drawnSegments(model: LevelModel): readonly Segment[] {
  const walls = model.pieces.flatMap(({ from, to }): readonly Segment[] => [[from, to]]);
  const leaves = model.openings.flatMap(({ opening }): readonly Segment[] => {
    const swing = opening.kind === 'door' ? doorSwing(model, opening.id) : null;
    if (!swing) return [];
    const { hinge, open, width, start, sweep } = swing;
    const at = (share: number): XY => [
      hinge[0] + width * Math.cos(start + sweep * share),
      hinge[1] + width * Math.sin(start + sweep * share),
    ];
    return [[hinge, open], ...SHARES.map((i): Segment => [at(i / SHARES.length), at((i + 1) / SHARES.length)])];
  });
  return [...walls, ...leaves];
}

function outlineSegments({ level }: LevelModel): readonly Segment[] {
  return [...level.fixtures, ...level.objects].flatMap(({ shape }) => {
    const ring = 'circle' in shape ? circle(shape.circle.center, shape.circle.radius) : shapeRing(shape);
    return ring.map((p, i): Segment => [p, ring[(i + 1) % ring.length] as XY]);
  });
}

function circle([x, y]: XY, radius: number): readonly XY[] {
  return Array.from(
    { length: 72 },
    (_, i): XY => [x + radius * Math.cos((i * Math.PI) / 36), y + radius * Math.sin((i * Math.PI) / 36)],
  );
}

function segmentsOf(part: Part | undefined): readonly Segment[] {
  return (part?.outlines ?? []).flatMap(({ run }) =>
    run.slice(1).flatMap((p, i): readonly Segment[] => {
      const before = run[i] as XY;
      return 'kind' in p || 'kind' in before ? [] : [[before, p]];
    }),
  );
}

/** A dimension line without its ticks. */
function lineBox(segments: readonly Segment[]): Box {
  return segments.slice(0, -2).flat();
}

function textBox({ text, at, turn, style }: Text, { measure }: LabelMedium): Box {
  return boxAt(at, measure(text, style), style.size * CAP_HEIGHT, turn);
}

function boxAt([x, y]: XY, width: number, height: number, turn: number): Box {
  const [cos, sin] = [Math.cos((turn * Math.PI) / 180), Math.sin((turn * Math.PI) / 180)];
  return [
    [-1, -1],
    [1, -1],
    [1, 1],
    [-1, 1],
  ].map(([i = 0, j = 0]): XY => {
    const [dx, dy] = [(i * width) / 2, (j * height) / 2];
    return [x + dx * cos - dy * sin, y + dx * sin + dy * cos];
  });
}

/** An overlap of less than this, mm of the plan, is no crossing: it is less than 0.05 px on every screen of these tests. */
const TOUCH = 0.2;

/** Whether two convex shapes overlap. */
function meet(a: readonly XY[], b: readonly XY[]): boolean {
  const [one, other] = [boundsOf(a), boundsOf(b)];
  const apart = one.maxX < other.minX || other.maxX < one.minX || one.maxY < other.minY || other.maxY < one.minY;
  return !apart && meetExactly(a, b);
}

const boundsOf = memoize((points: readonly XY[]) => ringExtent(points));

/** Separating axis test: no line parallel to a side of one shape separates them. */
function meetExactly(a: readonly XY[], b: readonly XY[]): boolean {
  return (
    [a, b].every((shape) =>
      shape.every(([x, y], i) => {
        const [nx, ny] = shape[(i + 1) % shape.length] as XY;
        const length = Math.hypot(nx - x, ny - y);
        if (length === 0) return true;
        const [ux, uy] = [(ny - y) / length, (x - nx) / length];
        const [first, second] = [a, b].map((each) => each.map(([px, py]) => px * ux + py * uy)) as [number[], number[]];
        return Math.max(...first) > Math.min(...second) + TOUCH && Math.max(...second) > Math.min(...first) + TOUCH;
      }),
    ) && spans(a, b)
  );
}

/** For a segment its own direction is an axis too. */
function spans(a: readonly XY[], b: readonly XY[]): boolean {
  return [a, b].every((shape) => {
    if (shape.length !== 2) return true;
    const [[x, y], [nx, ny]] = shape as readonly [XY, XY];
    const [ux, uy] = [nx - x, ny - y];
    const [first, second] = [a, b].map((each) => each.map(([px, py]) => px * ux + py * uy)) as [number[], number[]];
    return Math.max(...first) > Math.min(...second) && Math.max(...second) > Math.min(...first);
  });
}

/** Whether a point is inside rings, by the even-odd rule. */
function holds(rings: readonly (readonly XY[])[], [px, py]: XY): boolean {
  let inside = false;
  for (const ring of rings) {
    ring.forEach(([ax, ay], i) => {
      const [bx, by] = ring[(i + 1) % ring.length] as XY;
      if (ay > py !== by > py && px < ax + ((bx - ax) * (py - ay)) / (by - ay)) inside = !inside;
    });
  }
  return inside;
}
