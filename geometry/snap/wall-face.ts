import type { LevelModel } from '../level/types.ts';
import type { Mm, Wall, XY } from '../plan/model.ts';
import { distance } from '../plane/point.ts';

/** A floor edge this close to the wall's face is on it, mm: slightly above the rounding to 1/64 in. */
const ON_FACE = 0.5;

/**
 * Returns the length along a wall as taped from inside the room, that is, of its one face, mm. Null if no room or
 * several are along it, or if the room has a corner on it: then there is no single length.
 */
export function wallFaceLength(model: LevelModel, wall: Wall): Mm | null {
  const lengths: Mm[] = [];
  for (const { floorRings } of model.rooms) {
    for (const ring of floorRings) {
      ring.forEach((b, index) => {
        const a = ring[(index + ring.length - 1) % ring.length] as XY;
        if (liesOnFace(wall, a) && liesOnFace(wall, b) && overlaps(wall, a, b)) lengths.push(distance(a, b));
      });
    }
  }
  return lengths.length === 1 ? (lengths[0] ?? null) : null;
}

function liesOnFace(wall: Wall, p: XY): boolean {
  const length = distance(wall.from, wall.to) || 1;
  const dx = wall.to[0] - wall.from[0];
  const dy = wall.to[1] - wall.from[1];
  const off = Math.abs(dx * (p[1] - wall.from[1]) - dy * (p[0] - wall.from[0])) / length;
  return Math.abs(off - wall.thickness / 2) <= ON_FACE;
}

/** Returns whether the edge is next to the wall itself, not beyond its ends. */
function overlaps(wall: Wall, a: XY, b: XY): boolean {
  const dx = wall.to[0] - wall.from[0];
  const dy = wall.to[1] - wall.from[1];
  const share = (p: XY) => ((p[0] - wall.from[0]) * dx + (p[1] - wall.from[1]) * dy) / (dx * dx + dy * dy || 1);
  const [low, high] = [share(a), share(b)].sort((x, y) => x - y) as [number, number];
  return Math.min(high, 1) - Math.max(low, 0) > 0.01;
}
