import { Clipper, FillRule, type Path64 } from 'clipper2-ts';
import type { Polygon, Task } from '../task.ts';
import type { TimedRun } from './rival.ts';

/** Clipper works on whole numbers: thousandths of a mm. */
const GRID = 1000;

export async function clipperTs() {
  return ({ rooms, zones }: Task): TimedRun => {
    const paths = zones.map(pathsOf);
    const work = rooms.map(({ floor, near }) => ({ floor: pathsOf(floor), near: near.flatMap((i) => paths[i] ?? []) }));
    return () => {
      const results = work.map(({ floor, near }) => Clipper.difference(floor, near, FillRule.NonZero));
      return () => results.reduce((sum, result) => sum + Clipper.areaPaths(result), 0) / (GRID * GRID);
    };
  };
}

function pathsOf(polygons: readonly Polygon[]): Path64[] {
  return polygons.flat().map((ring) => ring.map(([x, y]) => ({ x: Math.round(x * GRID), y: Math.round(y * GRID) })));
}
