import type { LevelModel, Room } from '../level/types.ts';
import type { Mm, Opening, Wall, XY } from '../plan/model.ts';
import { along, distance } from '../plane/point.ts';
import { ringsContain } from '../plane/ring.ts';
import type { Line } from '../plane/types.ts';
import { cornerLines } from '../snap/opening-fit.ts';

/**
 * How an opening is set out by tape in one of the rooms beside it: along the face, from the corner on each side to the
 * nearer jamb.
 */
export interface TapedOffsets {
  readonly room: Room;
  readonly left: Mm;
  readonly right: Mm;
  /** Along the face, from the corner on the left to the jamb, and from the one on the right. */
  readonly lines: { readonly left: Line; readonly right: Line };
  /** Direction in which a person in that room faces the wall, a unit vector. */
  readonly facing: XY;
  /** The change of the opening's own offset when the left length grows: 1 or −1. */
  readonly way: 1 | -1;
}

/** Distance from the wall's face at which the room is looked up, mm. */
const OFF_FACE: Mm = 1;

/**
 * Returns one entry per side of the wall with a room: left and right as seen from that room, facing the wall. In room
 * order.
 */
export function tapedOffsets(
  model: LevelModel,
  wall: Wall,
  opening: Pick<Opening, 'offset' | 'width'>,
): readonly TapedOffsets[] {
  const length = distance(wall.from, wall.to);
  if (length === 0) return [];
  const middle = along(wall.from, wall.to, (opening.offset + opening.width / 2) / length);
  const [ux, uy] = [(wall.to[0] - wall.from[0]) / length, (wall.to[1] - wall.from[1]) / length];
  const reach = wall.thickness / 2 + OFF_FACE;
  const sides = ([1, -1] as const).flatMap((way): TapedOffsets[] => {
    // The point to the right of the wall's direction; facing the wall from there, its start is on the left.
    const at: XY = [middle[0] - uy * reach * way, middle[1] + ux * reach * way];
    const room = model.rooms.find(({ floorRings }) => ringsContain(floorRings, at));
    if (!room) return [];
    const [[beginning, near], [far, end]] = cornerLines(model, wall, opening.offset, opening.width, at);
    const on = ([x, y]: XY): Mm => (x - wall.from[0]) * ux + (y - wall.from[1]) * uy;
    // Negative if the jamb is behind the corner, as next to a thick wall.
    const [first, second] = [opening.offset - on(beginning), on(end) - opening.offset - opening.width];
    const [a, b]: readonly [Line, Line] = [
      [beginning, near],
      [end, far],
    ];
    const facing: XY = [uy * way, -ux * way];
    return way === 1
      ? [{ room, left: first, right: second, lines: { left: a, right: b }, facing, way }]
      : [{ room, left: second, right: first, lines: { left: b, right: a }, facing, way }];
  });
  return sides.sort((a, b) => model.rooms.indexOf(a.room) - model.rooms.indexOf(b.room));
}

/** Returns the direction in which a wall is faced at an opening from the only room beside it; null for two rooms or none. */
export function facingOf(model: LevelModel, wall: Wall, opening: Pick<Opening, 'offset' | 'width'>): XY | null {
  const [only, other] = tapedOffsets(model, wall, opening);
  return only && !other ? only.facing : null;
}
