import start from 'clipper2-wasm';
import type { Points } from './geos.ts';
import { wedge } from './plane.ts';

type Library = Awaited<ReturnType<typeof start>>;

/** Decimal digits of a mm that this library keeps, because it computes with integers. */
const DECIMALS = 4;

/** A second library for areas, with other authors and another method than GEOS (a sweep in integers). */
export class Clipper {
  private readonly library: Library;

  private constructor(library: Library) {
    this.library = library;
  }

  static async open(): Promise<Clipper> {
    return new Clipper(await start());
  }

  /** Returns the part of an area (outer ring, then holes) that none of the rings covers, mm². */
  areaLeft(rings: readonly Points[], taken: readonly Points[]): number {
    const subject = this.paths(rings.map((ring, i) => turned(ring, i === 0)));
    const clips = this.paths(taken.map((ring) => turned(ring, true)));
    const left = this.library.DifferenceD(subject, clips, this.library.FillRule.NonZero, DECIMALS);
    const area = this.library.AreaPathsD(left);
    for (const paths of [subject, clips, left]) paths.delete();
    return area;
  }

  private paths(rings: readonly Points[]) {
    const paths = new this.library.PathsD();
    for (const ring of rings) {
      const path = new this.library.PathD();
      path.assign(new Float64Array(ring.flatMap(([x, y]) => [x, y, 0])));
      paths.push_back(path);
      path.delete();
    }
    return paths;
  }
}

/** Returns the ring with positive area, or with negative area. */
function turned(ring: Points, positive: boolean): Points {
  const twice = ring.reduce((sum, p, i) => sum + wedge(p, ring[(i + 1) % ring.length] ?? p), 0);
  return twice > 0 === positive ? ring : [...ring].reverse();
}
