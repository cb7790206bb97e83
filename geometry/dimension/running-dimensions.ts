import type { LevelModel } from '../level/types.ts';
import type { Mm, Opening, Wall, XY } from '../plan/model.ts';
import { distance } from '../plane/point.ts';
import type { Ring } from '../plane/types.ts';
import { type Dimension, roomDimensions, roomFaces } from './room-dimensions.ts';

/** What a dimension ends at: a corner of the room, or a jamb of an opening. */
type DimensionEnd = { readonly kind: 'corner' } | { readonly kind: 'jamb'; readonly opening: string };

/**
 * A length as taped along one face of a room: the whole face, or one of a string of lengths that set out its
 * openings. It runs from left to right, or downwards if vertical.
 */
export interface RunningDimension extends Dimension {
  /** Identifies the same length of the same face or opening, whatever its value. */
  readonly key: string;
  readonly row: 'whole' | 'string';
  readonly ends: readonly [DimensionEnd, DimensionEnd];
  /** Whether a string is between it and the wall, so that it is drawn farther out. */
  readonly beyondString: boolean;
}

/** A jamb this close to a corner or another jamb leaves nothing to tape, mm. */
const TOUCHING: Mm = 1;

/**
 * Returns the inside lengths of every room, one per length and direction, then the strings of openings. Each opening
 * is listed once, in the first room of the level that has it, because a door has two faces. Zero lengths at a corner
 * are omitted.
 */
export function runningDimensions(model: LevelModel): readonly RunningDimension[] {
  const strings = openingStrings(model);
  return [...wholeDimensions(model, new Set(strings.map(faceKey))), ...strings];
}

/** Returns the inside lengths of the rooms alone. `strung` holds the keys of the faces with a string. */
export function wholeDimensions(
  model: LevelModel,
  strung: ReadonlySet<string> = new Set(),
): readonly RunningDimension[] {
  const counted = counter();
  return roomDimensions(model).map((face): RunningDimension => {
    const turned = fromLeft(face);
    const ends = [{ kind: 'corner' }, { kind: 'corner' }] as const;
    const key = counted(['whole', face.room, ...face.outward.map((each) => Math.round(each * 100))].join(' '));
    return { ...turned, key, row: 'whole', ends, beyondString: strung.has(faceKey({ ...turned, face: turned })) };
  });
}

/** Numbers equal keys: a room may have two faces of different lengths on one side. */
function counter(): (key: string) => string {
  const counts = new Map<string, number>();
  return (key) => {
    const before = counts.get(key) ?? 0;
    counts.set(key, before + 1);
    return before === 0 ? key : `${key} ${before}`;
  };
}

interface StringPart extends RunningDimension {
  readonly face: Dimension;
}

function openingStrings(model: LevelModel): readonly StringPart[] {
  const listed = new Set<string>();
  const placed = wallsWithOpenings(model);
  return model.rooms.flatMap((room) =>
    roomFaces(model, room).flatMap((each) => {
      const face = fromLeft(each);
      const spans = spansOn(placed, face);
      if (spans.every(({ opening }) => listed.has(opening.id))) return [];
      for (const { opening } of spans) listed.add(opening.id);
      return partsOf(face, spans);
    }),
  );
}

/** An opening projected onto a face: from and to, mm from the start of the face. */
interface Span {
  readonly opening: Opening;
  readonly from: Mm;
  readonly to: Mm;
}

/** A wall with its openings, in file order: whether a face is one of the wall's is decided once for all of them. */
interface WallWithOpenings {
  readonly wall: Wall;
  readonly length: Mm;
  readonly openings: readonly { readonly opening: Opening; readonly body: Ring }[];
}

function wallsWithOpenings(model: LevelModel): readonly WallWithOpenings[] {
  const ofWall = new Map<string, LevelModel['openings'][number][]>();
  for (const each of model.openings) {
    const openings = ofWall.get(each.opening.wall);
    if (openings) openings.push(each);
    else ofWall.set(each.opening.wall, [each]);
  }
  return model.level.walls
    .map((wall) => ({ wall, length: distance(wall.from, wall.to), openings: ofWall.get(wall.id) ?? [] }))
    .filter(({ length, openings }) => length > 0 && openings.length > 0);
}

function spansOn(walls: readonly WallWithOpenings[], face: Dimension): readonly Span[] {
  const spans: Span[] = [];
  for (const each of walls) {
    if (!hasFace(each, face)) continue;
    for (const { opening, body } of each.openings) {
      const [from, to] = extentAlong(body, face);
      if (from >= -TOUCHING && to <= face.length + TOUCHING) spans.push({ opening, from, to });
    }
  }
  return spans.sort((a, b) => a.from - b.from);
}

/** Returns whether the face is one of the two faces of the wall: parallel to it, half its thickness away. */
function hasFace(
  { wall: { from, to, thickness }, length }: WallWithOpenings,
  { from: a, outward }: Dimension,
): boolean {
  const along = Math.abs((to[0] - from[0]) * outward[0] + (to[1] - from[1]) * outward[1]);
  if (along >= 0.001 * length) return false;
  const off = (from[0] - a[0]) * outward[0] + (from[1] - a[1]) * outward[1];
  return Math.abs(off - thickness / 2) < TOUCHING;
}

function extentAlong(ring: Ring, { from, to, length }: Dimension): readonly [Mm, Mm] {
  const ux = (to[0] - from[0]) / length;
  const uy = (to[1] - from[1]) / length;
  let least = Number.POSITIVE_INFINITY;
  let most = Number.NEGATIVE_INFINITY;
  for (const corner of ring) {
    const far = (corner[0] - from[0]) * ux + (corner[1] - from[1]) * uy;
    if (far < least) least = far;
    if (far > most) most = far;
  }
  return [least, most];
}

function partsOf(face: Dimension, spans: readonly Span[]): readonly StringPart[] {
  const corner: DimensionEnd = { kind: 'corner' };
  const jamb = ({ opening }: Span): DimensionEnd => ({ kind: 'jamb', opening: opening.id });
  const parts: StringPart[] = [];
  const add = (from: Mm, to: Mm, ends: RunningDimension['ends']) => {
    if (to - from < TOUCHING) return;
    const [a, b] = [pointOn(face, from), pointOn(face, to)];
    const key = ['string', ...ends.map((end) => (end.kind === 'jamb' ? end.opening : ''))].join(' ');
    parts.push({ ...face, key, from: a, to: b, length: to - from, row: 'string', ends, beyondString: false, face });
  };
  let before: Span | null = null;
  for (const span of spans) {
    add(before?.to ?? 0, span.from, [before ? jamb(before) : corner, jamb(span)]);
    add(span.from, span.to, [jamb(span), jamb(span)]);
    before = span;
  }
  if (before) add(before.to, face.length, [jamb(before), corner]);
  return parts;
}

function pointOn({ from, to, length }: Dimension, far: Mm): XY {
  return [from[0] + ((to[0] - from[0]) * far) / length, from[1] + ((to[1] - from[1]) * far) / length];
}

/** Returns the same length read from the left, or from above. */
function fromLeft(face: Dimension): Dimension {
  const [dx, dy] = [face.to[0] - face.from[0], face.to[1] - face.from[1]];
  const reads = Math.abs(dx) >= Math.abs(dy) ? dx > 0 : dy > 0;
  return reads ? face : { ...face, from: face.to, to: face.from };
}

function faceKey({ face }: { readonly face: Dimension }): string {
  return [...face.from, ...face.to].join(' ');
}
