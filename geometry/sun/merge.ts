import { freeBoundary, Scratch } from '../arrangement/free-boundary.ts';
import { linkRings } from '../arrangement/link-rings.ts';
import { OutlineStore } from '../arrangement/outline-store.ts';
import { reversedRing, straightRing } from '../arrangement/rings.ts';
import { EVERYWHERE } from '../arrangement/space.ts';
import { growZone } from '../arrangement/zone.ts';
import type { XY } from '../plan/model.ts';
import { ringBody } from '../plane/body.ts';
import { along, distance } from '../plane/point.ts';
import { ringContains, signedArea } from '../plane/ring.ts';
import type { Ring } from '../plane/types.ts';

/** A cell is tested at these points of each side, as fractions of its length, each moved toward the cell's middle by this, mm. */
const INSET = 0.02;
const SHOWN = [0, 0.5];

/** A hole at most this wide on average is filled, mm. */
const NARROW = 5;

/**
 * Returns rings that together cover the cells, as few as possible. A hole is joined to its outer ring by a line that is traversed twice.
 * If rounding makes the merged rings lose part of a cell, the cells themselves are returned.
 */
export function mergedCells(cells: readonly Ring[]): readonly Ring[] {
  if (cells.length < 2) return cells;
  const store = new OutlineStore();
  const zones = cells.map((cell) => growZone(ringBody(cell), 0, null, store));
  const rings = linkRings(freeBoundary(zones, EVERYWHERE, new Scratch()))
    .map((ring) => straightRing(reversedRing(ring)))
    .filter((ring) => ring.length >= 3);
  const outer = rings.filter((ring) => signedArea(ring) > 0);
  const holes = rings.filter((ring) => signedArea(ring) < -NARROW * perimeter(ring));
  const isIn = (p: XY) => outer.some((ring) => ringContains(ring, p)) && !holes.some((ring) => ringContains(ring, p));
  const isWhole = cells.every((cell) => {
    const middle = middleOf(cell);
    return (
      isIn(middle) &&
      cell.every((a, i) => {
        const b = cell[(i + 1) % cell.length] as XY;
        return SHOWN.every((share) => isIn(inward(along(a, b, share), middle)));
      })
    );
  });
  if (!isWhole) return cells;
  return outer.map((ring) =>
    holes
      .filter((hole) => ringContains(ring, hole[0] as XY))
      .reduce<Ring>((joined, hole) => bridged(joined, hole), ring),
  );
}

function perimeter(ring: Ring): number {
  return ring.reduce((sum, p, i) => sum + distance(p, ring[(i + 1) % ring.length] as XY), 0);
}

function middleOf(cell: Ring): XY {
  const [x, y] = cell.reduce(([sx, sy], [px, py]) => [sx + px, sy + py], [0, 0]);
  return [x / cell.length, y / cell.length];
}

function inward(corner: XY, middle: XY): XY {
  const long = distance(corner, middle);
  return long <= INSET ? middle : along(corner, middle, INSET / long);
}

/** Returns a ring that includes a hole by going to it, around it and back, at the nearest pair of corners. */
function bridged(ring: Ring, hole: Ring): Ring {
  let [best, i, j] = [Number.POSITIVE_INFINITY, 0, 0];
  ring.forEach((p, m) => {
    hole.forEach((q, n) => {
      const d = distance(p, q);
      if (d >= best) return;
      [best, i, j] = [d, m, n];
    });
  });
  return [...ring.slice(0, i + 1), ...hole.slice(j), ...hole.slice(0, j + 1), ...ring.slice(i)];
}
