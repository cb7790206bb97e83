import type { LevelModel } from '../level/types.ts';
import type { Level, Mm, Shape, Wall, XY } from '../plan/model.ts';
import { bodyDistance, shapeBody, shapeMiddle, shapeRing } from '../plane/body.ts';
import { meanValueCoordinates } from '../plane/mean-value-coordinates.ts';
import { sameIfUnchanged } from '../plane/memoize.ts';
import { along, distance, nearestOnSegment, nearestParameter, roundPoint, vectorLength } from '../plane/point.ts';
import { translateShape } from '../plane/rigid-motion.ts';
import { JOINED } from '../plane/tolerances.ts';
import type { Ring } from '../plane/types.ts';
import { withSupportedItems } from './supported-items.ts';

/** An item this close to a wall's face is against it, mm: an inch. */
const AGAINST_WALL: Mm = 25.4;
/** Rounding error, mm. */
const ROUNDING: Mm = 1e-6;

/**
 * Moves items along with walls that an edit has moved: items against a wall keep their distance to it, with what is
 * on them; room labels keep their relative position in their room. Free-standing items stay.
 *
 * @param before the model of the level before the edit
 * @param after the same level with its walls moved: same ids, everything else unchanged
 */
export function withItemsAtWalls(before: LevelModel, after: Level): Level {
  const { walls } = before.level;
  if (walls === after.walls) return after;
  const pairs = walls.flatMap((was) => {
    const is = after.walls.find(({ id }) => id === was.id);
    return is ? [{ was, is }] : [];
  });
  const moves = new Map<string, XY>();
  for (const { id, shape } of [...after.fixtures, ...after.objects]) {
    const by = pushed(pairs, shape);
    if (vectorLength(...by) > ROUNDING) moves.set(id, by);
  }
  const carried = <T extends { readonly id: string; readonly shape: Shape }>(thing: T): T => {
    const by = moves.get(thing.id);
    return by ? { ...thing, shape: translateShape(thing.shape, by) } : thing;
  };
  const pushedAlong: Level = {
    ...after,
    fixtures: sameIfUnchanged(after.fixtures, after.fixtures.map(carried)),
    objects: sameIfUnchanged(after.objects, after.objects.map(carried)),
    rooms: sameIfUnchanged(
      after.rooms,
      after.rooms.map((label) => {
        const ring = before.rooms.find(({ labels }) => labels.some(({ id }) => id === label.id))?.centerRings[0];
        const by = ring && ringMove(pairs, ring, label.at);
        return by && vectorLength(...by) > ROUNDING ? { ...label, at: shifted(label.at, by) } : label;
      }),
    ),
  };
  return withSupportedItems(before.level, pushedAlong, new Set(moves.keys()));
}

interface WallPair {
  readonly was: Wall;
  readonly is: Wall;
}

/** Returns the translation of an item: along the normal of each wall that it is against, by that wall's movement. */
function pushed(pairs: readonly WallPair[], shape: Shape): XY {
  const middle = shapeMiddle(shape);
  const push: { readonly normal: XY; readonly by: Mm }[] = [];
  for (const { was, is } of pairs) {
    const length = distance(was.from, was.to);
    if (length === 0 || !standsAgainst(was, shape)) continue;
    const [dx, dy] = wallMove({ was, is }, middle);
    const normal: XY = [(was.to[1] - was.from[1]) / length, (was.from[0] - was.to[0]) / length];
    push.push({ normal, by: dx * normal[0] + dy * normal[1] });
  }
  push.sort((a, b) => Math.abs(b.by) - Math.abs(a.by));
  const [first] = push;
  if (!first) return [0, 0];
  const { normal: n, by } = first;
  // In a corner, the second wall moves it along the first one.
  const second = push.find(({ normal: m }) => Math.abs(n[0] * m[1] - n[1] * m[0]) > 0.2);
  if (!second) return [n[0] * by, n[1] * by];
  const m = second.normal;
  const determinant = n[0] * m[1] - n[1] * m[0];
  return [(by * m[1] - second.by * n[1]) / determinant, (second.by * n[0] - by * m[0]) / determinant];
}

function standsAgainst({ from, to, thickness }: Wall, shape: Shape): boolean {
  const body = shapeBody(shape);
  const near = [from, to].map(([x, y]) => bodyDistance(body, x, y));
  const corners = 'circle' in shape ? [] : shapeRing(shape);
  const toCorners = corners.map((corner) => distance(corner, nearestOnSegment(corner, from, to)));
  const middle = shapeMiddle(shape);
  const foot = nearestOnSegment(middle, from, to);
  const far = Math.min(...near, ...toCorners, bodyDistance(body, foot[0], foot[1]));
  return far <= thickness / 2 + AGAINST_WALL;
}

/** Returns the movement of the wall at the point next to `at`. */
function wallMove({ was, is }: WallPair, at: XY): XY {
  const t = nearestParameter(at, was.from, was.to);
  const [a, b] = [along(was.from, was.to, t), along(is.from, is.to, t)];
  return [b[0] - a[0], b[1] - a[1]];
}

function ringMove(pairs: readonly WallPair[], ring: Ring, at: XY): XY {
  const shares = meanValueCoordinates(ring, at);
  const by = ring.map((corner) => cornerMove(pairs, corner));
  const sum = (axis: 0 | 1) => by.reduce((total, move, i) => total + move[axis] * (shares[i] ?? 0), 0);
  return [sum(0), sum(1)];
}

/** A corner moves with the end of a wall there, else with the wall that passes through it. */
function cornerMove(pairs: readonly WallPair[], corner: XY): XY {
  for (const end of ['from', 'to'] as const) {
    const pair = pairs.find(({ was }) => distance(was[end], corner) <= JOINED);
    if (pair) return [pair.is[end][0] - pair.was[end][0], pair.is[end][1] - pair.was[end][1]];
  }
  const through = pairs.find(({ was }) => distance(corner, nearestOnSegment(corner, was.from, was.to)) <= JOINED);
  return through ? wallMove(through, corner) : [0, 0];
}

function shifted([x, y]: XY, [dx, dy]: XY): XY {
  return roundPoint([x + dx, y + dy]);
}
