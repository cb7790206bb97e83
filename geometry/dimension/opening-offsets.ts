import type { LevelModel, Room } from '../level/types.ts';
import type { Mm, Opening, Wall, XY } from '../plan/model.ts';
import { along, distance } from '../plane/point.ts';
import { ringsContain } from '../plane/ring.ts';
import { cornerLines } from '../snap/opening-fit.ts';

/** How an opening is set out by tape in one of the rooms beside it: from the corner on each hand to the nearer jamb, along the face. */
export interface TapedOffsets {
  readonly room: Room;
  readonly left: Mm;
  readonly right: Mm;
  /** What the opening's own offset grows by when the length on the left hand does: 1 or −1. */
  readonly way: 1 | -1;
}

/** A tape is held this far off the wall's face to find the room, mm. */
const BESIDE: Mm = 1;

/** For each side of the wall that a room lies on: left and right as seen from that room, facing the wall. The first room of the level first. */
export function tapedOffsets(
  model: LevelModel,
  wall: Wall,
  opening: Pick<Opening, 'offset' | 'width'>,
): readonly TapedOffsets[] {
  const length = distance(wall.from, wall.to);
  if (length === 0) return [];
  const middle = along(wall.from, wall.to, (opening.offset + opening.width / 2) / length);
  const [ux, uy] = [(wall.to[0] - wall.from[0]) / length, (wall.to[1] - wall.from[1]) / length];
  const reach = wall.thickness / 2 + BESIDE;
  const sides = ([1, -1] as const).flatMap((way): TapedOffsets[] => {
    // To the right of one who walks along the wall; facing it from there, its beginning is on the left hand.
    const at: XY = [middle[0] - uy * reach * way, middle[1] + ux * reach * way];
    const room = model.rooms.find(({ floorRings }) => ringsContain(floorRings, at));
    if (!room) return [];
    const [[beginning], [, end]] = cornerLines(model, wall, opening.offset, opening.width, at);
    const on = ([x, y]: XY): Mm => (x - wall.from[0]) * ux + (y - wall.from[1]) * uy;
    // Below zero where the jamb lies behind the corner, as one next to a thick wall may.
    const [first, second] = [opening.offset - on(beginning), on(end) - opening.offset - opening.width];
    return [way === 1 ? { room, left: first, right: second, way } : { room, left: second, right: first, way }];
  });
  return sides.sort((a, b) => model.rooms.indexOf(a.room) - model.rooms.indexOf(b.room));
}
