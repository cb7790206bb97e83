import type { LevelModel } from '../level/types.ts';
import type { Level, Mm, Opening, XY } from '../plan/model.ts';
import { distance } from '../plane/point.ts';
import { ringsContain } from '../plane/ring.ts';
import { jambs } from './pick.ts';

/**
 * The corners of an opening's body: for each jamb from the left face of the wall to the right one, in the direction of
 * the wall.
 */
export interface JambCorners {
  readonly near: readonly [left: XY, right: XY];
  readonly far: readonly [left: XY, right: XY];
}

/** Returns the corners of an opening; null if its wall is missing or has no length. */
export function jambCorners(level: Level, opening: Opening): JambCorners | null {
  const ends = jambs(level, opening);
  const wall = level.walls.find(({ id }) => id === opening.wall);
  if (!ends || !wall) return null;
  const [nx, ny] = leftward(wall.from, wall.to);
  const half = wall.thickness / 2;
  const across = ([x, y]: XY): readonly [XY, XY] => [
    [x + nx * half, y + ny * half],
    [x - nx * half, y - ny * half],
  ];
  return { near: across(ends[0]), far: across(ends[1]) };
}

/**
 * The symbol of a door: the leaf at right angles to its wall, hinged at the near jamb, with a quarter circle to the far
 * jamb.
 */
export interface DoorSwing {
  readonly hinge: XY;
  /** Tip of the open leaf. */
  readonly open: XY;
  readonly width: Mm;
  /** The arc from the tip of the closed leaf to that of the open one, radians clockwise on screen. */
  readonly start: number;
  readonly sweep: number;
}

/**
 * Returns the swing of a door: into the room if only one side has a room; to the left between two rooms. Null if it cannot
 * be drawn.
 */
export function doorSwing(model: LevelModel, id: string): DoorSwing | null {
  const opening = model.level.openings.find((each) => each.id === id);
  const corners = opening && jambCorners(model.level, opening);
  if (!opening || !corners) return null;
  const leftInside = isInside(model, corners, 0);
  const side = leftInside || !isInside(model, corners, 1) ? 0 : 1;
  const [hinge, shut] = [corners.near[side], corners.far[side]];
  const [nx, ny] = leftward(hinge, shut);
  const sign = side === 0 ? 1 : -1;
  const open: XY = [hinge[0] + sign * nx * opening.width, hinge[1] + sign * ny * opening.width];
  const start = Math.atan2(shut[1] - hinge[1], shut[0] - hinge[0]);
  // Left of a line is counter-clockwise from it on screen.
  return { hinge, open, width: opening.width, start, sweep: (-sign * Math.PI) / 2 };
}

/** Returns whether the middle of the leaf's sweep on that side is on a floor. */
function isInside(model: LevelModel, { near, far }: JambCorners, side: 0 | 1): boolean {
  const [a, b] = [near[side], far[side]];
  const [nx, ny] = leftward(a, b);
  const out = (side === 0 ? 1 : -1) * distance(a, b) * 0.4;
  const p: XY = [(a[0] + b[0]) / 2 + nx * out, (a[1] + b[1]) / 2 + ny * out];
  return model.rooms.some(({ floorRings }) => ringsContain(floorRings, p));
}

/** Returns the unit vector to the left of the direction from a to b, on screen. */
function leftward(a: XY, b: XY): XY {
  const length = distance(a, b) || 1;
  return [(b[1] - a[1]) / length, -(b[0] - a[0]) / length];
}
