import type { LevelModel } from '../level/types.ts';
import type { Deg, Level, Mm, XY } from '../plan/model.ts';
import { fullTurn } from '../plane/bearing.ts';
import { distance, nearestOnSegment, roundPoint } from '../plane/point.ts';
import { ringEdges } from '../plane/ring.ts';
import type { Line } from '../plane/types.ts';

/** The target that a drawn point snapped to. */
type SnapKind = 'end' | 'crossing' | 'wall' | 'angle' | 'aligned' | 'grid' | 'none';

/** The snapped position of a drawn point, and the guide lines that explain it. */
export interface Snapped {
  readonly at: XY;
  readonly hold: SnapKind;
  /** Lines to show, in plan coordinates. */
  readonly guides: readonly Line[];
}

export interface SnapTargets {
  /** Ends of walls. */
  readonly ends: readonly XY[];
  /** Center-lines of walls. */
  readonly centerLines: readonly Line[];
  /** Edges of the floors: the wall faces that people measure from. */
  readonly faces: readonly Line[];
}

export interface SnapOptions {
  /** Snap distance, mm. */
  readonly reach: Mm;
  /** Grid step in mm; null for none. */
  readonly grid: Mm | null;
  /** Start of the line being drawn; null for a first point. */
  readonly from: XY | null;
  /** Preferred directions of a line from `from`, degrees; each applies both ways. */
  readonly directions: readonly Deg[];
}

/**
 * A line snaps to a preferred direction when it deviates by less than this, degrees: the unsteadiness of a short drag.
 */
const DIRECTION_TOLERANCE: Deg = 7;
/** Horizontal, vertical and both diagonals. */
export const RIGHT_ANGLES: readonly Deg[] = [0, 45, 90, 135];

/** Returns the snap targets of a level, without the items in `except` (those that move). */
export function snapTargets(
  level: Level,
  model: LevelModel | null,
  except: ReadonlySet<string> = new Set(),
): SnapTargets {
  const walls = level.walls.filter(({ id }) => !except.has(id));
  return {
    ends: walls.flatMap(({ from, to }) => [from, to]),
    centerLines: walls.map(({ from, to }) => [from, to] as const),
    faces: model ? model.rooms.flatMap(({ floorRings }) => floorRings.flatMap(ringEdges)) : [],
  };
}

/**
 * Returns the snapped position of a wall corner. In order of precedence: a wall's end; on a preferred direction from
 * `from`, the crossing with a wall or the alignment with another end; a wall; the grid. With nothing near, the point itself.
 */
export function snapPoint(at: XY, targets: SnapTargets, options: SnapOptions): Snapped {
  const snapped = heldPoint(at, targets, options);
  return { ...snapped, at: roundPoint(snapped.at) };
}

function heldPoint(at: XY, targets: SnapTargets, options: SnapOptions): Snapped {
  const end = nearest(at, targets.ends, options.reach);
  if (end) return { at: end, hold: 'end', guides: [] };
  const direction = options.from && preferredDirection(options.from, at, options.directions);
  if (options.from && direction) return alongDirection(at, options.from, direction, targets, options);
  return freePoint(at, targets, options);
}

/** Returns the nearest grid point; the point itself without a grid. */
export function onGrid([x, y]: XY, grid: Mm | null): XY {
  return roundPoint(grid ? [Math.round(x / grid) * grid, Math.round(y / grid) * grid] : [x, y]);
}

interface Direction {
  readonly ux: number;
  readonly uy: number;
}

function preferredDirection(from: XY, at: XY, directions: readonly Deg[]): Direction | null {
  const length = distance(from, at);
  if (length === 0) return null;
  const limit = Math.sin((DIRECTION_TOLERANCE * Math.PI) / 180);
  let best: Direction | null = null;
  let least = limit;
  for (const degrees of directions) {
    const ux = exactCos(degrees);
    const uy = exactCos(degrees - 90);
    const off = Math.abs((at[0] - from[0]) * uy - (at[1] - from[1]) * ux) / length;
    if (off < least) {
      least = off;
      best = { ux, uy };
    }
  }
  return best;
}

/** Cosine that is exactly 0 and ±1 at right angles, so that a horizontal wall is exactly horizontal. */
function exactCos(degrees: Deg): number {
  const turn = fullTurn(degrees);
  if (turn % 90 === 0) return [1, 0, -1, 0][turn / 90] as number;
  return Math.cos((turn * Math.PI) / 180);
}

function alongDirection(at: XY, from: XY, { ux, uy }: Direction, targets: SnapTargets, options: SnapOptions): Snapped {
  const length = (at[0] - from[0]) * ux + (at[1] - from[1]) * uy;
  const on = (far: Mm): XY => [from[0] + ux * far, from[1] + uy * far];
  const far = on(length);
  const crossing = nearestValue(length, crossingsAlong(from, far, { ux, uy }, targets.centerLines), options.reach);
  if (crossing !== null) return { at: on(crossing), hold: 'crossing', guides: [[from, on(crossing)]] };
  const level = nearestAligned(length, from, { ux, uy }, targets.ends, options.reach);
  if (level)
    return {
      at: on(level.far),
      hold: 'aligned',
      guides: [
        [from, on(level.far)],
        [level.end, on(level.far)],
      ],
    };
  const stepped = options.grid ? Math.round(length / options.grid) * options.grid : length;
  return { at: on(stepped), hold: 'angle', guides: [[from, on(stepped)]] };
}

/** Returns the distances along the direction to its crossings with lines; parallel lines have none. */
function crossingsAlong(from: XY, far: XY, { ux, uy }: Direction, lines: readonly Line[]): readonly Mm[] {
  const found: Mm[] = [];
  for (const [a, b] of lines) {
    const dx = b[0] - a[0];
    const dy = b[1] - a[1];
    const slant = ux * dy - uy * dx;
    if (Math.abs(slant) < 1e-9 * Math.hypot(dx, dy)) continue;
    const share = ((a[0] - from[0]) * uy - (a[1] - from[1]) * ux) / slant;
    const along = ((a[0] - from[0]) * dy - (a[1] - from[1]) * dx) / slant;
    if (share >= 0 && share <= 1 && Math.abs(along) > 1e-6) found.push(along);
  }
  return distance(from, far) === 0 ? [] : found;
}

/** Returns the distance along the direction to the point square across from another end. */
function nearestAligned(
  length: Mm,
  from: XY,
  { ux, uy }: Direction,
  ends: readonly XY[],
  reach: Mm,
): { readonly far: Mm; readonly end: XY } | null {
  let best: { far: Mm; end: XY } | null = null;
  for (const end of ends) {
    const far = (end[0] - from[0]) * ux + (end[1] - from[1]) * uy;
    const near = Math.abs(far - length);
    if (Math.abs(far) > 1e-6 && near <= reach && (!best || near < Math.abs(best.far - length))) best = { far, end };
  }
  return best;
}

function freePoint(at: XY, targets: SnapTargets, { reach, grid, from }: SnapOptions): Snapped {
  const onWalls = targets.centerLines.map(([a, b]) => nearestOnSegment(at, a, b));
  const wall = nearest(at, onWalls, reach);
  if (wall) return { at: wall, hold: 'wall', guides: [] };
  const guides: Line[] = from ? [] : alignments(at, targets.ends, reach);
  const [x, y] = onGrid(at, grid);
  const [upright, level] = [guides.find(isUpright), guides.find((line) => !isUpright(line))];
  const point: XY = [upright ? upright[0][0] : x, level ? level[0][1] : y];
  if (upright || level) {
    return { at: point, hold: 'aligned', guides: guides.map(([end]) => [end, point] as const) };
  }
  return { at: point, hold: grid ? 'grid' : 'none', guides: [] };
}

/** Returns the nearest end at the same y, and the nearest at the same x. */
function alignments(at: XY, ends: readonly XY[], reach: Mm): Line[] {
  const guides: Line[] = [];
  for (const axis of [0, 1] as const) {
    const near = ends.filter((end) => Math.abs(end[axis] - at[axis]) <= reach / 2);
    const [end] = near.sort((a, b) => distance(a, at) - distance(b, at));
    if (end) guides.push([end, axis === 0 ? [end[0], at[1]] : [at[0], end[1]]]);
  }
  return guides;
}

function isUpright([a, b]: Line): boolean {
  return a[0] === b[0];
}

function nearest(at: XY, points: readonly XY[], reach: Mm): XY | null {
  let best: XY | null = null;
  let least = reach;
  for (const point of points) {
    const far = distance(at, point);
    if (far <= least) {
      least = far;
      best = point;
    }
  }
  return best;
}

function nearestValue(value: number, candidates: readonly number[], reach: number): number | null {
  let best: number | null = null;
  for (const each of candidates) {
    const near = Math.abs(each - value);
    if (near <= reach && (best === null || near < Math.abs(best - value))) best = each;
  }
  return best;
}
