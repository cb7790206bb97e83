import { HALVES_BEYOND, type TapedBy } from '../dimension/taped-by.ts';
import type { Level, Mm, Wall, XY } from '../plan/model.ts';
import { lineCrossing, lineMoved } from '../plane/line.ts';
import { cross, distance, nearestOnSegment, roundPoint } from '../plane/point.ts';
import { signedArea } from '../plane/ring.ts';
import type { Line } from '../plane/types.ts';

/** Walls drawn one after another along the taped line: which center-lines they get, and where a wall of a typed length ends. */

/** Points closer than this are one corner, mm. */
export const SAME_CORNER: Mm = 0.5;
/** Sine of the angle below which a wall runs along another one and does not meet it. */
export const ALONG = 0.1;

/**
 * Returns the center-lines of the walls around an outline that was taped along their inside faces, their outside faces or
 * their center-lines, with mitered corners. Collinear corners are dropped. An outline without area gives none, nor does one
 * that is taped outside and leaves no room between its walls.
 */
export function wallsAroundOutline(points: readonly XY[], thickness: Mm, by: TapedBy = 'inside'): readonly Line[] {
  const ring = turningCorners(points);
  const area = signedArea(ring);
  if (ring.length < 3 || area === 0) return [];
  const clockwise = area > 0 ? ring : [...ring].reverse();
  // A clockwise outline has the outdoors on the left of each side.
  const lines = sidesOf(clockwise).map((side) => lineMoved(side, (-HALVES_BEYOND[by] * thickness) / 2));
  const corners = lines.map((line, i) => lineCrossing(lines[(i + lines.length - 1) % lines.length] as Line, line));
  const walls = sidesOf(corners.map((corner, i) => roundPoint(corner ?? (lines[i] as Line)[0])));
  const [kept, least] = [walls.every((wall, i) => runsWith(wall, sidesOf(clockwise)[i] as Line)), thickness];
  return kept && walls.every((wall) => by !== 'outside' || distance(...wall) > least) ? walls : [];
}

/** Returns the wall with the drawn point on its center-line or end: a line that starts or ends there joins that wall. */
export function wallAtPoint(level: Level, at: XY): Wall | null {
  return level.walls.find(({ from, to }) => distance(at, nearestOnSegment(at, from, to)) <= SAME_CORNER) ?? null;
}

/** Returns the wall that ends at a point where no other wall is; null where there is none. */
export function wallWithOpenEnd({ walls }: Level, at: XY): Wall | null {
  const [wall, ...others] = walls.filter(({ from, to }) => distance(at, nearestOnSegment(at, from, to)) <= SAME_CORNER);
  if (!wall || others.length > 0) return null;
  return distance(at, wall.from) <= SAME_CORNER || distance(at, wall.to) <= SAME_CORNER ? wall : null;
}

/**
 * Returns the length of a drawn line as taped, mm: shorter (inside) or longer (outside) by half of the wall that it meets at each end.
 * Nothing is added or removed at an end on no wall, or on a wall along the line. Never negative.
 *
 * @param more by how much the line is longer than the taped length for another reason, mm
 */
export function tapedLength(level: Level, [from, to]: Line, by: TapedBy = 'inside', more: Mm = 0): Mm {
  const beyond = halfWallAt(level, from, to) + halfWallAt(level, to, from);
  return Math.max(0, distance(from, to) - more + HALVES_BEYOND[by] * beyond);
}

/** Returns the distance along the line from `end` to the face of the walls there, mm; 0 if the line crosses none or runs along one. */
export function halfWallAt({ walls }: Level, end: XY, other: XY): Mm {
  const met = walls.filter(({ from, to }) => distance(end, nearestOnSegment(end, from, to)) <= SAME_CORNER);
  const halves = met.map((wall) => halfAlong(wall, [end, other]));
  const isOnOne = met.some((wall, i) => halves[i] === 0 && liesAhead(wall, [end, other]));
  return isOnOne ? 0 : Math.max(0, ...halves);
}

function liesAhead(wall: Wall, [end, other]: Line): boolean {
  return [wall.from, wall.to].some(
    ([x, y]) =>
      (x - end[0]) * (other[0] - end[0]) + (y - end[1]) * (other[1] - end[1]) > SAME_CORNER * distance(end, other),
  );
}

/** Where a wall of a typed length ends. */
export interface TypedEnd {
  readonly at: XY;
  /** The wall that it reaches; null for none. */
  readonly reached: Wall | null;
  /** The resulting length as taped, mm; differs from the typed one if the end was moved onto the wall. */
  readonly length: Mm;
}

/**
 * Returns the end of a wall that begins at `from`, is directed toward a point and is taped `length` mm long. An end within `tolerance` of the
 * wall that it then meets, or in that wall, is joined to it.
 *
 * @param more by how much the line is longer than the taped length for another reason, mm
 */
export function typedWallEnd(
  level: Level,
  from: XY,
  toward: XY,
  length: Mm,
  by: TapedBy,
  tolerance: Mm,
  more: Mm = 0,
): TypedEnd {
  const far = distance(from, toward) || 1;
  const on = (mm: Mm): XY => [
    from[0] + ((toward[0] - from[0]) * mm) / far,
    from[1] + ((toward[1] - from[1]) * mm) / far,
  ];
  const sign = HALVES_BEYOND[by];
  const center = length + more - sign * halfWallAt(level, from, toward);
  let reached: TypedEnd | null = null;
  let least = Number.POSITIVE_INFINITY;
  for (const wall of level.walls) {
    const half = halfAlong(wall, [from, toward]);
    const at = half === 0 ? null : lineCrossing([from, on(1000)], [wall.from, wall.to]);
    if (!at || distance(at, nearestOnSegment(at, wall.from, wall.to)) > wall.thickness / 2) continue;
    const ahead = ((at[0] - from[0]) * (toward[0] - from[0]) + (at[1] - from[1]) * (toward[1] - from[1])) / far;
    if (ahead <= SAME_CORNER) continue;
    const off = Math.abs(ahead + sign * half - center);
    const isIn = Math.abs(ahead - center) <= half;
    if ((off > tolerance && !isIn) || off >= least) continue;
    least = off;
    const taped = ahead - more + sign * (half + halfWallAt(level, from, toward));
    reached = { at: roundPoint(nearestOnSegment(at, wall.from, wall.to)), reached: wall, length: taped };
  }
  return reached ?? { at: roundPoint(on(center)), reached: null, length };
}

/** Returns half the thickness of a wall along a line that crosses it, mm; 0 where the line runs along the wall. */
function halfAlong({ from, to, thickness }: Wall, [a, b]: Line): Mm {
  const sine =
    Math.abs((to[0] - from[0]) * (b[1] - a[1]) - (to[1] - from[1]) * (b[0] - a[0])) /
    (distance(from, to) * distance(a, b) || 1);
  return sine < ALONG ? 0 : thickness / 2 / sine;
}

function sidesOf(ring: readonly XY[]): readonly Line[] {
  return ring.map((from, i) => [from, ring[(i + 1) % ring.length] as XY] as const);
}

function runsWith([a, b]: Line, [c, d]: Line): boolean {
  return (b[0] - a[0]) * (d[0] - c[0]) + (b[1] - a[1]) * (d[1] - c[1]) > 0;
}

function turningCorners(points: readonly XY[]): readonly XY[] {
  const apart = points.filter(
    (point, i) => distance(point, points[(i + points.length - 1) % points.length] as XY) > SAME_CORNER,
  );
  return apart.filter((b, i) => {
    const a = apart[(i + apart.length - 1) % apart.length] as XY;
    const c = apart[(i + 1) % apart.length] as XY;
    return Math.abs(cross(a, b, c)) > 1e-9 * distance(a, b) * distance(b, c);
  });
}
