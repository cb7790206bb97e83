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

/** Returns the inside lengths of the rooms alone. `strung`: keys of the faces with a string. */
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
  const walls = new Map(model.level.walls.map((wall) => [wall.id, wall]));
  const placed = model.openings.flatMap(({ opening, body }): PlacedOpening[] => {
    const wall = walls.get(opening.wall);
    return wall && distance(wall.from, wall.to) > 0 ? [{ opening, body, wall }] : [];
  });
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

interface PlacedOpening {
  readonly opening: Opening;
  readonly body: Ring;
  readonly wall: Wall;
}

function spansOn(placed: readonly PlacedOpening[], face: Dimension): readonly Span[] {
  const spans = placed.flatMap(({ opening, body, wall }): Span[] => {
    if (!hasFace(wall, face)) return [];
    const [from, to] = extentAlong(body, face);
    return from >= -TOUCHING && to <= face.length + TOUCHING ? [{ opening, from, to }] : [];
  });
  return spans.sort((a, b) => a.from - b.from);
}

/** Returns whether the face is one of the two faces of the wall: parallel to it, half its thickness away. */
function hasFace({ from, to, thickness }: Wall, { from: a, outward }: Dimension): boolean {
  const length = distance(from, to);
  const square = Math.abs((to[0] - from[0]) * outward[0] + (to[1] - from[1]) * outward[1]) < 0.001 * length;
  const off = (from[0] - a[0]) * outward[0] + (from[1] - a[1]) * outward[1];
  return square && Math.abs(off - thickness / 2) < TOUCHING;
}

function extentAlong(ring: Ring, { from, to, length }: Dimension): readonly [Mm, Mm] {
  const [ux, uy] = [(to[0] - from[0]) / length, (to[1] - from[1]) / length];
  const far = ring.map(([x, y]) => (x - from[0]) * ux + (y - from[1]) * uy);
  return [Math.min(...far), Math.max(...far)];
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
