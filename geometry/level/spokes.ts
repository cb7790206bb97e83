import type { XY } from '../plan/model.ts';
import { nearbyOf } from '../plane/nearby.ts';
import { distance } from '../plane/point.ts';
import { HIGH_DEGREE, SNAP_DISTANCE } from './tolerances.ts';
import type { CenterLine } from './types.ts';

/** With fewer walls near each other than this there is no cluster of ends, because a wall has two ends. */
export const FEWEST_SPOKES = HIGH_DEGREE / 2;

/** The cluster at each end of a line, by number; −1 for none. */
type Clusters = readonly [a: number, b: number];

/**
 * Returns a predicate: whether the far end of a line is in a cluster of very many wall ends together with an end of
 * the other line. Such walls diverge like spokes, and their near ends are not joined however close they are.
 *
 * @returns predicate of a line, the end of it that nearly meets the other, and the other line
 */
export function spokesTest(lines: readonly CenterLine[]): (line: CenterLine, end: XY, other: CenterLine) => boolean {
  const clusterOf = endClusters(lines.flatMap(({ a, b }) => [a, b]));
  if (clusterOf.size === 0) return () => false;
  const clusters = new Map<CenterLine, Clusters>(
    lines.map((line) => [line, [clusterOf.get(line.a) ?? -1, clusterOf.get(line.b) ?? -1]]),
  );
  return (line, end, other) => {
    const [a, b] = clusters.get(line) as Clusters;
    const far = end === line.a ? b : a;
    return far >= 0 && (clusters.get(other) as Clusters).includes(far);
  };
}

/** Returns the cluster, by number, of every end that has very many others within half an inch. */
function endClusters(ends: readonly XY[]): Map<XY, number> {
  const clusterOf = new Map<XY, number>();
  if (ends.length <= HIGH_DEGREE) return clusterOf;
  const findNear = nearbyOf(ends.map((end) => [end]));
  const centers: XY[] = [];
  for (const end of ends) {
    if (clusterOf.has(end)) continue;
    const near = findNear([end], SNAP_DISTANCE)
      .map((i) => ends[i] as XY)
      .filter((other) => distance(other, end) <= SNAP_DISTANCE);
    if (near.length <= HIGH_DEGREE) continue;
    const existing = centers.findIndex((center) => distance(center, end) <= SNAP_DISTANCE);
    const cluster = existing >= 0 ? existing : centers.push(end) - 1;
    for (const other of near) if (!clusterOf.has(other)) clusterOf.set(other, cluster);
  }
  return clusterOf;
}
