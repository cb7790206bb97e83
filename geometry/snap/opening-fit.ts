import type { LevelModel } from '../level/types.ts';
import type { Level, Mm, Opening, Wall, XY } from '../plan/model.ts';
import { memoize } from '../plane/memoize.ts';
import { along, distance, nearestParameter, roundCoordinate } from '../plane/point.ts';
import { withoutStraightCorners } from '../plane/ring.ts';
import type { Line } from '../plane/types.ts';

/** A position on a wall: distance along its center-line from its `from` end, mm. */
export interface WallPlace {
  readonly wall: Wall;
  readonly along: Mm;
}

/** Why an opening cannot be at a position. Lengths in mm. */
export type Misfit =
  | { readonly kind: 'wall-too-short'; readonly wall: Mm; readonly needs: Mm }
  | { readonly kind: 'over-another'; readonly other: Opening; readonly by: Mm };

/**
 * Returns the wall whose body is nearest to the point, within `reach` mm; null for none. Walls without length are
 * ignored.
 */
export function wallAt(level: Level, at: XY, reach: Mm): WallPlace | null {
  let best: WallPlace | null = null;
  let least = reach;
  for (const wall of level.walls) {
    const length = distance(wall.from, wall.to);
    const t = nearestParameter(at, wall.from, wall.to);
    const far = Math.max(0, distance(at, along(wall.from, wall.to, t)) - wall.thickness / 2);
    if (length > 0 && far <= least) {
      least = far;
      best = { wall, along: t * length };
    }
  }
  return best;
}

/**
 * Returns where an opening of this width fits with its middle near `middle` along the wall, moved in from the ends of
 * the wall if needed; refused when the wall is too short or another opening is in the way.
 *
 * @param step offsets are multiples of this, mm; null for any
 * @param except id of the opening that is being moved
 */
export function fitOpening(
  level: Level,
  wall: Wall,
  middle: Mm,
  width: Mm,
  step: Mm | null,
  except: string | null = null,
): { readonly offset: Mm; readonly misfit: Misfit | null } {
  const length = distance(wall.from, wall.to);
  if (width > length) return { offset: 0, misfit: { kind: 'wall-too-short', wall: length, needs: width } };
  const wanted = middle - width / 2;
  const stepped = step ? Math.round(wanted / step) * step : wanted;
  const offset = roundCoordinate(Math.min(length - width, Math.max(0, stepped)));
  return { offset, misfit: overlap(level, wall.id, offset, width, except) };
}

/**
 * Returns why an opening does not fit at its present position (for example after its width was typed): past the end of
 * the wall, or over another opening; null if it fits.
 */
export function openingMisfit(level: Level, opening: Opening): Misfit | null {
  const wall = level.walls.find(({ id }) => id === opening.wall);
  const length = wall ? distance(wall.from, wall.to) : 0;
  const end = opening.offset + opening.width;
  if (opening.offset < 0 || end > length) {
    return { kind: 'wall-too-short', wall: length, needs: opening.offset < 0 ? opening.width - opening.offset : end };
  }
  return overlap(level, opening.wall, opening.offset, opening.width, opening.id);
}

/**
 * Returns the two lengths that are taped to set out an opening: from each jamb to the corner of the room on the side
 * of `at`, or to the ends of the wall's center-line if no room is on that side.
 */
export function cornerLines(
  model: LevelModel | null,
  wall: Wall,
  offset: Mm,
  width: Mm,
  at: XY,
): readonly [Line, Line] {
  const length = distance(wall.from, wall.to) || 1;
  const on = (mm: Mm): XY => along(wall.from, wall.to, mm / length);
  const [near, far] = [on(offset), on(offset + width)];
  const face = model && faceBeside(model, wall, on(offset + width / 2), at);
  if (!face)
    return [
      [wall.from, near],
      [far, wall.to],
    ];
  const [first, second] = parameterOn(wall, face[0]) <= parameterOn(wall, face[1]) ? face : [face[1], face[0]];
  return [
    [first, footOn(near, face)],
    [footOn(far, face), second],
  ];
}

function overlap(level: Level, wallId: string, offset: Mm, width: Mm, except: string | null): Misfit | null {
  for (const other of level.openings) {
    if (other.wall !== wallId || other.id === except) continue;
    const by = Math.min(offset + width, other.offset + other.width) - Math.max(offset, other.offset);
    if (by > 0.1) return { kind: 'over-another', other, by };
  }
  return null;
}

const cornersOf = memoize(withoutStraightCorners);

/** Returns the whole face of the room on this wall, next to `middle` and on the side of `at`. */
function faceBeside(model: LevelModel, wall: Wall, middle: XY, at: XY): Line | null {
  const half = wall.thickness / 2 + 1;
  const side = Math.sign(sideOf(wall, at)) || 1;
  for (const { floorRings } of model.rooms) {
    for (const floorRing of floorRings) {
      const ring = cornersOf(floorRing);
      for (let i = 0; i < ring.length; i++) {
        const a = ring[(i + ring.length - 1) % ring.length] as XY;
        const b = ring[i] as XY;
        const beside = Math.abs(offLine(wall, a)) <= half && Math.abs(offLine(wall, b)) <= half;
        if (!beside || Math.sign(sideOf(wall, along(a, b, 0.5))) !== side) continue;
        const t = nearestParameter(middle, a, b);
        if (t > 0 && t < 1) return [a, b];
      }
    }
  }
  return null;
}

function sideOf(wall: Wall, p: XY): number {
  return (wall.to[0] - wall.from[0]) * (p[1] - wall.from[1]) - (wall.to[1] - wall.from[1]) * (p[0] - wall.from[0]);
}

/** Returns the signed distance from the wall's center-line, mm. */
function offLine(wall: Wall, p: XY): Mm {
  return sideOf(wall, p) / (distance(wall.from, wall.to) || 1);
}

function parameterOn(wall: Wall, p: XY): number {
  const dx = wall.to[0] - wall.from[0];
  const dy = wall.to[1] - wall.from[1];
  return (p[0] - wall.from[0]) * dx + (p[1] - wall.from[1]) * dy;
}

function footOn(p: XY, [a, b]: Line): XY {
  return along(a, b, nearestParameter(p, a, b));
}
