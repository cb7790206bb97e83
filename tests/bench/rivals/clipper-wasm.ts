import load from 'clipper2-wasm';
import type { Polygon, Task } from '../task.ts';
import type { TimedRun } from './rival.ts';

/** Clipper works on whole numbers: thousandths of a mm. */
const DECIMALS = 3;

/** Copying the coordinates into the library's memory is part of the timed run, because it cannot be avoided. */
export async function clipperWasm() {
  const clipper = await load();
  return ({ rooms, zones }: Task): TimedRun => {
    const flat = zones.map((polygons) => polygons.flat().map(flatRing));
    const work = rooms.map(({ floor, near }) => ({ floor: floor.flat().map(flatRing), near }));
    const newPath = (ring: Float64Array) => {
      const path = new clipper.PathD();
      path.assign(ring);
      return path;
    };
    return () => {
      const paths = flat.map((rings) => rings.map(newPath));
      const results = work.map(({ floor, near }) => {
        const subject = new clipper.PathsD();
        const clips = new clipper.PathsD();
        for (const ring of floor) {
          const path = newPath(ring);
          subject.push_back(path);
          path.delete();
        }
        for (const i of near) for (const path of paths[i] ?? []) clips.push_back(path);
        const result = clipper.DifferenceD(subject, clips, clipper.FillRule.NonZero, DECIMALS);
        subject.delete();
        clips.delete();
        return result;
      });
      for (const path of paths.flat()) path.delete();
      return () => {
        const area = results.reduce((sum, result) => sum + clipper.AreaPathsD(result), 0);
        for (const result of results) result.delete();
        return area;
      };
    };
  };
}

/** x, y and an unused third number for each corner. */
function flatRing(ring: Polygon[number]): Float64Array {
  const flat = new Float64Array(ring.length * 3);
  ring.forEach(([x, y], i) => {
    flat[3 * i] = x;
    flat[3 * i + 1] = y;
  });
  return flat;
}
