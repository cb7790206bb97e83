import Flatbush from 'flatbush';
import type { XY } from '../plan/model.ts';
import { distance } from '../plane/point.ts';
import { type CentreLine, CROWD, SNAP } from './touch.ts';

/** The cluster at each end of a line, by number; −1 for none. */
type Places = readonly [a: number, b: number];

/**
 * Returns a predicate: whether a wall starts at a cluster of very many wall ends together with another wall. Such walls
 * diverge like spokes, and
 * their other ends are not joined however close they are.
 *
 * @returns predicate of a line, the end of it that nearly meets the other, and the other line
 */
export function spokesTest(lines: readonly CentreLine[]): (line: CentreLine, end: XY, other: CentreLine) => boolean {
  const placeOf = crowdedPlaces(lines.flatMap(({ a, b }) => [a, b]));
  if (placeOf.size === 0) return () => false;
  const places = new Map<CentreLine, Places>(
    lines.map((line) => [line, [placeOf.get(line.a) ?? -1, placeOf.get(line.b) ?? -1]]),
  );
  return (line, end, other) => {
    const [a, b] = places.get(line) as Places;
    const far = end === line.a ? b : a;
    return far >= 0 && (places.get(other) as Places).includes(far);
  };
}

/** Returns the cluster, by number, of every end that has very many others within half an inch. */
function crowdedPlaces(ends: readonly XY[]): Map<XY, number> {
  const placeOf = new Map<XY, number>();
  if (ends.length <= CROWD) return placeOf;
  const index = new Flatbush(ends.length);
  for (const [x, y] of ends) index.add(x, y, x, y);
  index.finish();
  const centers: XY[] = [];
  for (const end of ends) {
    if (placeOf.has(end)) continue;
    const [x, y] = end;
    const near = index
      .search(x - SNAP, y - SNAP, x + SNAP, y + SNAP)
      .map((i) => ends[i] as XY)
      .filter((other) => distance(other, end) <= SNAP);
    if (near.length <= CROWD) continue;
    const known = centers.findIndex((center) => distance(center, end) <= SNAP);
    const place = known >= 0 ? known : centers.push(end) - 1;
    for (const other of near) if (!placeOf.has(other)) placeOf.set(other, place);
  }
  return placeOf;
}
