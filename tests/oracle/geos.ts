import initGeosJs from 'geos-wasm';

/** A GEOS geometry; lives until the next `releaseAll`. */
export type Geom = number & { readonly kind: 'geos geometry' };
export type Point = readonly [x: number, y: number];
export type Points = readonly Point[];

type Library = Awaited<ReturnType<typeof initGeosJs>>;

/**
 * The functions of GEOS (3.13, as WebAssembly) that the oracle needs, with plain arrays as arguments and results. GEOS errors are
 * thrown. Rooms are never united with each other: this build has silently returned a wrong union of neighboring rooms.
 */
export class Geos {
  private readonly made: Geom[] = [];
  private readonly out: number;
  private readonly library: Library;

  private constructor(library: Library) {
    this.library = library;
    this.out = library.Module._malloc(8);
  }

  static async open(): Promise<Geos> {
    const fail = (message: string) => {
      throw new Error(`GEOS: ${message}`);
    };
    return new Geos(await initGeosJs({ errorHandler: fail, noticeHandler: () => undefined }));
  }

  /** Frees every geometry made since the last call. */
  releaseAll(): void {
    for (const geom of this.made.splice(0)) this.library.GEOSGeom_destroy(geom);
  }

  /** Returns a polygon from its outer ring, then its holes; rings are open. */
  area(rings: readonly Points[]): Geom {
    return this.keep(this.unkept(rings));
  }

  line(points: Points): Geom {
    return this.keep(this.library.GEOSGeom_createLineString(this.sequence(points)));
  }

  point(x: number, y: number): Geom {
    return this.keep(this.library.GEOSGeom_createPointFromXY(x, y));
  }

  /** Returns the lines split wherever they meet, each stretch once, as pairs of points; coordinates are on a grid of `grid` mm. */
  noded(lines: readonly Points[], grid: number): [Point, Point][] {
    const parts = lines.map((line) => this.library.GEOSGeom_createLineString(this.sequence(line)));
    const all = this.collection(MULTI_LINE, parts);
    const union = this.keep(this.library.GEOSUnaryUnionPrec(all, grid));
    return this.parts(union).flatMap((part) => {
      const points = this.coordinates(part);
      return points.slice(1).map((to, i): [Point, Point] => [points[i] as Point, to]);
    });
  }

  /** Returns the bounded faces of noded lines: each with its outer ring first, then its holes. */
  faces(segments: readonly (readonly [Point, Point])[]): Points[][] {
    const lines = segments.map((segment) => this.line(segment));
    const found = this.withPointers(lines, (at) => this.library.GEOSPolygonize(at, lines.length));
    return this.parts(this.keep(found)).map((part) => this.rings(part));
  }

  /**
   * Returns the part of `a` outside `b`. Where edges nearly coincide, this build of GEOS sometimes loses parts of the result, keeps parts that
   * it should subtract, or fails. A result that does not add up to `a` together with the intersection is computed again on coarser and
   * coarser grids.
   */
  difference(a: Geom, b: Geom, grids: readonly number[] = GRIDS): Geom {
    const whole = this.measure(a);
    const least = whole - this.measure(b);
    for (const grid of grids) {
      const found = this.attempt(() => this.areal(this.keep(this.library.GEOSDifferencePrec(a, b, grid))));
      if (!found) continue;
      const area = this.measure(found);
      if (area < least - DUST || area > whole + DUST) continue;
      const shared = this.attempt(() => this.areal(this.keep(this.library.GEOSIntersectionPrec(a, b, grid))));
      if (shared && Math.abs(area + this.measure(shared) - whole) <= DUST + OUTLINE * grid) return found;
    }
    throw new Error('GEOS finds no difference on any grid');
  }

  /** Returns the area itself, or made valid if rounding has made its rings cross slightly. */
  repaired(a: Geom): Geom {
    return Number(this.library.GEOSisValid(a)) === 1 ? a : this.areal(this.keep(this.library.GEOSMakeValid(a)));
  }

  private attempt<T>(work: () => T): T | null {
    try {
      return work();
    } catch {
      return null;
    }
  }

  intersection(a: Geom, b: Geom): Geom {
    return this.areal(this.keep(this.library.GEOSIntersection(a, b)));
  }

  boundary(a: Geom): Geom {
    return this.keep(this.library.GEOSBoundary(a));
  }

  /** Returns all points within `distance`; round ends and corners have `perQuadrant` chords per quarter turn, on the inside. */
  buffer(a: Geom, distance: number, perQuadrant: number): Geom {
    return this.keep(this.library.GEOSBuffer(a, distance, perQuadrant));
  }

  measure(a: Geom): number {
    this.library.GEOSArea(a, this.out);
    return this.read();
  }

  distance(a: Geom, b: Geom): number {
    this.library.GEOSDistance(a, b, this.out);
    return this.read();
  }

  distanceTo(a: Geom, x: number, y: number): number {
    const point = this.library.GEOSGeom_createPointFromXY(x, y);
    this.library.GEOSDistance(a, point, this.out);
    this.library.GEOSGeom_destroy(point);
    return this.read();
  }

  /** Returns whether the point is in the area or on its edge. */
  holds(a: Geom, x: number, y: number): boolean {
    const point = this.library.GEOSGeom_createPointFromXY(x, y);
    const answer = this.library.GEOSIntersects(a, point);
    this.library.GEOSGeom_destroy(point);
    return Number(answer) === 1;
  }

  /** Returns whether two areas have a point in common. */
  meets(a: Geom, b: Geom): boolean {
    return Number(this.library.GEOSIntersects(a, b)) === 1;
  }

  isEmpty(a: Geom): boolean {
    return Number(this.library.GEOSisEmpty(a)) === 1;
  }

  /** Returns the areas of a result, ring by ring; lines and points in the result are omitted. */
  areas(a: Geom): Points[][] {
    return this.parts(a)
      .filter((part) => Number(this.library.GEOSGeomTypeId(part)) === POLYGON)
      .map((part) => this.rings(part));
  }

  /** Returns a result without the lines and points that GEOS adds where areas only touch. */
  private areal(a: Geom): Geom {
    if (Number(this.library.GEOSGeomTypeId(a)) !== COLLECTION) return a;
    return this.collection(
      MULTI_POLYGON,
      this.areas(a).map((rings) => this.unkept(rings)),
    );
  }

  private unkept(rings: readonly Points[]): number {
    const [outer, ...holes] = rings.map((ring) => this.library.GEOSGeom_createLinearRing(this.sequence(closed(ring))));
    if (outer === undefined) throw new Error('a polygon needs a ring');
    return this.withPointers(holes, (at) => this.library.GEOSGeom_createPolygon(outer, at, holes.length));
  }

  private parts(a: Geom): Geom[] {
    const count = this.library.GEOSGetNumGeometries(a);
    return Array.from({ length: count }, (_, i) => this.library.GEOSGetGeometryN(a, i) as Geom);
  }

  private rings(polygon: Geom): Points[] {
    const holes = this.library.GEOSGetNumInteriorRings(polygon);
    const rings = [this.library.GEOSGetExteriorRing(polygon)];
    for (let i = 0; i < holes; i++) rings.push(this.library.GEOSGetInteriorRingN(polygon, i));
    return rings.map((ring) => this.coordinates(ring as Geom).slice(0, -1));
  }

  private coordinates(line: Geom): Point[] {
    const count = this.library.GEOSGeomGetNumPoints(line);
    const sequence = this.library.GEOSGeom_getCoordSeq(line);
    const buffer = this.library.Module._malloc(count * 16);
    this.library.GEOSCoordSeq_copyToBuffer(sequence, buffer, 0, 0);
    const flat = Array.from(this.library.Module.HEAPF64.subarray(buffer / 8, buffer / 8 + count * 2));
    this.library.Module._free(buffer);
    return Array.from({ length: count }, (_, i): Point => [flat[2 * i] as number, flat[2 * i + 1] as number]);
  }

  private sequence(points: Points): number {
    const buffer = this.library.Module._malloc(points.length * 16);
    const heap = this.library.Module.HEAPF64;
    points.forEach(([x, y], i) => {
      heap[buffer / 8 + 2 * i] = x;
      heap[buffer / 8 + 2 * i + 1] = y;
    });
    const sequence = this.library.GEOSCoordSeq_copyFromBuffer(buffer, points.length, 0, 0);
    this.library.Module._free(buffer);
    return sequence;
  }

  private collection(type: number, parts: readonly number[]): Geom {
    return this.keep(this.withPointers(parts, (at) => this.library.GEOSGeom_createCollection(type, at, parts.length)));
  }

  private withPointers<T>(pointers: readonly number[], use: (at: number) => T): T {
    if (pointers.length === 0) return use(0);
    const at = this.library.Module._malloc(pointers.length * 4);
    this.library.Module.HEAPU32.set(pointers, at / 4);
    const result = use(at);
    this.library.Module._free(at);
    return result;
  }

  private read(): number {
    return this.library.Module.HEAPF64[this.out / 8] as number;
  }

  private keep(pointer: number): Geom {
    if (pointer === 0) throw new Error('GEOS gave no geometry');
    this.made.push(pointer as Geom);
    return pointer as Geom;
  }
}

/** Grids that are tried, mm; 0 is plain floating point, which is fast and nearly always right. A region changes by less than outline × grid. */
export const GRIDS = [0, 1e-6, 1e-5, 1e-4, 3e-4];
/** Tolerance for rounding, mm². */
const DUST = 1;
/** Longer than the outline of any room, mm: a grid changes an area by less than this times its step. */
const OUTLINE = 4e5;

/** Codes of GEOS's geometry types. */
const POLYGON = 3;
const MULTI_LINE = 5;
const MULTI_POLYGON = 6;
const COLLECTION = 7;

function closed(ring: Points): Points {
  const [first] = ring;
  return first ? [...ring, first] : [];
}
