import load from 'clipper2-wasm';
import type { Polygon, Task } from '../task.ts';
import { GRID } from './clipper-ts.ts';
import type { TimedRun } from './rival.ts';

/** Copying the coordinates into the library's memory is part of the run: there is no other way in. */
export async function clipperWasm() {
  const clipper = await load();
  return ({ rooms, zones }: Task): TimedRun => {
    const flat = zones.map((polygons) => polygons.flat().map(flatRing));
    const work = rooms.map(({ floor, near }) => ({ floor: floor.flat().map(flatRing), near }));
    const newPath = (ring: BigInt64Array) => {
      const path = new clipper.Path64();
      path.assign(ring);
      return path;
    };
    return () => {
      const paths = flat.map((rings) => rings.map(newPath));
      const results = work.map(({ floor, near }) => {
        const subject = new clipper.Paths64();
        const clips = new clipper.Paths64();
        for (const ring of floor) {
          const path = newPath(ring);
          subject.push_back(path);
          path.delete();
        }
        for (const i of near) for (const path of paths[i] ?? []) clips.push_back(path);
        const result = clipper.Difference64(subject, clips, clipper.FillRule.NonZero);
        subject.delete();
        clips.delete();
        return result;
      });
      for (const path of paths.flat()) path.delete();
      return () => {
        const area = results.reduce((sum, result) => sum + clipper.AreaPaths64(result), 0);
        for (const result of results) result.delete();
        return area / (GRID * GRID);
      };
    };
  };
}

/** x, y and an unused third number for each corner. */
function flatRing(ring: Polygon[number]): BigInt64Array {
  const flat = new BigInt64Array(ring.length * 3);
  ring.forEach(([x, y], i) => {
    flat[3 * i] = BigInt(Math.round(x * GRID));
    flat[3 * i + 1] = BigInt(Math.round(y * GRID));
  });
  return flat;
}
