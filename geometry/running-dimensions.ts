import { shapeMiddle } from './body.ts';
import { footprintReach } from './footprint.ts';
import type { LevelModel } from './level/types.ts';
import { JOINED, withItemsMoved } from './move-items.ts';
import { cornerLines } from './opening-fit.ts';
import { tapedOffsets } from './opening-offsets.ts';
import type { Level, Mm, Opening, Wall, XY } from './plan/model.ts';
import { distance, nearestOnSegment } from './point.ts';
import { type Dimension, roomDimensions } from './room-dimensions.ts';
import { type Line, tidy } from './snap.ts';
import { moveToGap, SIDES, type Side, wallGaps } from './wall-gaps.ts';

/**
 * Lengths that stand on the drawing and can be corrected where they stand: the faces of the rooms; for what is selected, the
 * string of openings along its wall, or the free lengths from its edge to the walls.
 */
export type RunningDimension = {
  /** The same key is the same length of the same thing, whatever it measures now. */
  readonly key: string;
  readonly line: Line;
  readonly length: Mm;
  /** Unit vector from the wall that it lies along into the room; [0, 0] for one that runs free. */
  readonly inward: XY;
} & (
  | { readonly of: 'face'; readonly dimension: Dimension }
  /** From the edge of a thing or detector to the wall on one side of the page. */
  | { readonly of: 'gap'; readonly id: string; readonly side: Side }
  /** Along a wall, between jambs and corners: the opening that slides when it is corrected, and which way. */
  | { readonly of: 'clear'; readonly opening: string; readonly way: 1 | -1 }
  | { readonly of: 'width'; readonly opening: string }
);

/** A gap below this, mm, is none: no tape reads it. */
const TOUCHING: Mm = 1;
/** How far a corner of a room lies off the centre-line of the wall that makes it, beyond half its thickness, mm. */
const OFF_FACE: Mm = 1;

/** The lengths of the rooms, as `roomDimensions` has them. */
export function faceDimensions(model: LevelModel): readonly RunningDimension[] {
  return roomDimensions(model).map(faceDimension);
}

export function faceDimension(dimension: Dimension): RunningDimension {
  const { from, to, length, room, outward } = dimension;
  return {
    of: 'face',
    key: ['face', room, ...outward].join(' '),
    line: [from, to],
    length,
    inward: [-outward[0], -outward[1]],
    dimension,
  };
}

/** The lengths about one selected thing; none for a room's name, and for a wall that no room lies beside. */
export function dimensionsAbout(model: LevelModel, id: string): readonly RunningDimension[] {
  const { level } = model;
  const detector = level.detectors.find((each) => each.id === id);
  if (detector) {
    const { radius } = detector;
    return gapsAbout(model, id, detector.at, { left: radius, right: radius, up: radius, down: radius });
  }
  const thing = [...level.fixtures, ...level.objects].find((each) => each.id === id);
  if (thing) return gapsAbout(model, id, shapeMiddle(thing.shape), footprintReach(thing.shape));
  const opening = level.openings.find((each) => each.id === id);
  const wall = level.walls.find((each) => each.id === (opening?.wall ?? id));
  return wall ? stringAlong(model, wall) : [];
}

function gapsAbout(
  model: LevelModel,
  id: string,
  middle: XY,
  reach: Readonly<Record<Side, Mm>>,
): readonly RunningDimension[] {
  const gaps = wallGaps(model, middle, reach);
  return SIDES.flatMap((side): RunningDimension[] => {
    const length = gaps[side];
    if (length === null || length <= TOUCHING) return [];
    const [dx, dy] = moveToGap(side, 1, 0);
    const at = (mm: Mm): XY => [middle[0] + dx * (reach[side] + mm), middle[1] + dy * (reach[side] + mm)];
    return [{ of: 'gap', key: `gap ${id} ${side}`, line: [at(0), at(length)], length, inward: [0, 0], id, side }];
  });
}

/**
 * Corner, jamb, jamb, ..., corner along the face of the first room beside the wall. A stretch between two openings slides the
 * second one; the last stretch slides the last opening back. A wall without openings has its face alone, which the room shows.
 */
function stringAlong(model: LevelModel, wall: Wall): readonly RunningDimension[] {
  const openings = model.level.openings.filter((each) => each.wall === wall.id).sort((a, b) => a.offset - b.offset);
  const string: RunningDimension[] = [];
  openings.forEach((opening, index) => {
    const [[corner, near], [far, end]] = facesOf(model, wall, opening);
    const before = openings[index - 1];
    // From the corner of the room, or from the far jamb of the opening before it where that stands nearer.
    const last = before && facesOf(model, wall, before)[1][0];
    const inward = inwardOf(wall, near);
    const start = last && distance(last, near) < distance(corner, near) ? last : corner;
    const clear = (key: string, line: Line, way: 1 | -1) => {
      const length = distance(...line);
      if (length > TOUCHING)
        string.push({ of: 'clear', key: `${key} ${opening.id}`, line, length, inward, opening: opening.id, way });
    };
    clear('before', [start, near], 1);
    string.push({
      of: 'width',
      key: `width ${opening.id}`,
      line: [near, far],
      length: opening.width,
      inward,
      opening: opening.id,
    });
    const after = openings[index + 1];
    const next = after && facesOf(model, wall, after)[0][1];
    if (!next || distance(far, end) < distance(far, next)) clear('after', [far, end], -1);
  });
  return string;
}

/** From the wall's line to a point on one of its faces. */
function inwardOf({ from, to }: Wall, onFace: XY): XY {
  const foot = nearestOnSegment(onFace, from, to);
  const far = distance(foot, onFace);
  return far === 0 ? [0, 0] : [(onFace[0] - foot[0]) / far, (onFace[1] - foot[1]) / far];
}

function facesOf(model: LevelModel, wall: Wall, { offset, width }: Opening): readonly [Line, Line] {
  const [taped] = tapedOffsets(model, wall, { offset, width });
  const at = taped?.room.labelPoint ?? wall.from;
  return cornerLines(model, wall, offset, width, at);
}

/** Which end of a face goes when its length is corrected: the wall that stands there is moved, with all that hangs on it. */
export type FaceEnd = 'from' | 'to';

/**
 * The level with one of its running dimensions made `length` mm long. Whether what comes out can stand is not looked at: openings
 * may overlap or reach past their wall, rooms may open. The same level where nothing changes or nothing stands at the end.
 */
export function withDimension(model: LevelModel, dimension: RunningDimension, length: Mm, end: FaceEnd = 'to'): Level {
  const { level } = model;
  const by = tidy(length - dimension.length);
  if (by === 0) return level;
  switch (dimension.of) {
    case 'gap':
      return withItemsMoved(level, new Set([dimension.id]), moveToGap(dimension.side, dimension.length, length));
    case 'width':
      return withOpening(level, dimension.opening, (opening) => ({ ...opening, width: length }));
    case 'clear':
      return withOpening(level, dimension.opening, (opening) => ({
        ...opening,
        offset: tidy(opening.offset + by * dimension.way),
      }));
    case 'face':
      return withFace(level, dimension.dimension, by, end);
  }
}

function withOpening(level: Level, id: string, change: (opening: Opening) => Opening): Level {
  return { ...level, openings: level.openings.map((each) => (each.id === id ? change(each) : each)) };
}

function withFace(level: Level, { from, to, length }: Dimension, by: Mm, end: FaceEnd): Level {
  const along: XY = [(to[0] - from[0]) / length, (to[1] - from[1]) / length];
  const wall = wallAcross(level.walls, end === 'to' ? to : from, along);
  if (!wall) return level;
  const sign = end === 'to' ? 1 : -1;
  const run = new Set(wallsInLine(level.walls, wall).map(({ id }) => id));
  return withItemsMoved(level, run, [tidy(along[0] * by * sign), tidy(along[1] * by * sign)]);
}

/** The wall that the face ends at: it stands across, and the corner lies on its side. */
function wallAcross(walls: readonly Wall[], corner: XY, along: XY): Wall | null {
  const near = walls.flatMap((wall) => {
    const far = distance(corner, nearestOnSegment(corner, wall.from, wall.to));
    const length = distance(wall.from, wall.to) || 1;
    const lean = Math.abs((wall.to[0] - wall.from[0]) * along[0] + (wall.to[1] - wall.from[1]) * along[1]) / length;
    // Half its thickness off its line, and at an acute corner a little more.
    return lean < Math.SQRT1_2 && far <= wall.thickness / 2 + OFF_FACE ? [{ wall, lean }] : [];
  });
  return near.sort((a, b) => a.lean - b.lean)[0]?.wall ?? null;
}

/** The wall and those that run on from it in one line: a face may be drawn in parts. */
function wallsInLine(walls: readonly Wall[], start: Wall): readonly Wall[] {
  const run = [start];
  for (const wall of run) {
    for (const other of walls) {
      if (run.includes(other) || !isInLine(start, other)) continue;
      const meet = [wall.from, wall.to].some((a) => [other.from, other.to].some((b) => distance(a, b) <= JOINED));
      if (meet) run.push(other);
    }
  }
  return run;
}

function isInLine({ from, to }: Wall, other: Wall): boolean {
  const length = distance(from, to) || 1;
  const off = (p: XY) => Math.abs((to[0] - from[0]) * (p[1] - from[1]) - (to[1] - from[1]) * (p[0] - from[0])) / length;
  return off(other.from) <= OFF_FACE && off(other.to) <= OFF_FACE;
}
