import type { LevelModel, OpeningBody } from '../level/types.ts';
import type { Deg, Mm, Opening, XY } from '../plan/model.ts';
import { distance } from '../plane/point.ts';
import { COLUMN, COLUMNS, type Sky } from './sky.ts';
import { thinnerParts } from './thinner.ts';

/** The altitude below which the sun is hidden from an opening, degrees. */
export function obstructionOf({ shade }: Opening): Deg {
  return typeof shade === 'object' ? (shade?.obstruction ?? 0) : 0;
}

/**
 * An opening seen from one side: x along the inner face of its wall, y into the room. A beam runs along (k, 1), where k is the
 * tangent of the angle between it and y.
 */
export interface Glass {
  readonly opening: Opening;
  readonly origin: XY;
  /** Unit vector along x; y is a quarter turn clockwise on screen from it. */
  readonly x: XY;
  readonly width: Mm;
  /** The distance from the outer face to the inner one. */
  readonly thickness: Mm;
  /** How far a thicker wall that runs along a part of the opening extends beyond either face. */
  readonly thicker: Mm;
  /** The part of the width in which the wall is this thin: only light that passes through this part counts. */
  readonly from: Mm;
  readonly to: Mm;
}

/**
 * Returns an opening as seen from either side of its wall: with the depth of the thickest wall there, and again for each thinner part of its
 * width with the depth of that part.
 */
export function sidesOf(one: OpeningBody, pieces: LevelModel['pieces']): readonly Glass[] {
  const { opening, body } = one;
  const [a, b, , d] = body as readonly [XY, XY, XY, XY];
  const width = distance(a, b);
  const deepest = distance(a, d);
  const x: XY = [(b[0] - a[0]) / width, (b[1] - a[1]) / width];
  const moved = ([px, py]: XY, by: Mm): XY => [px + by * x[1], py - by * x[0]];
  const sides = (thickness: Mm, from: Mm, to: Mm): readonly Glass[] => {
    const thicker = (deepest - thickness) / 2;
    const both = { opening, width, thickness, thicker };
    return [
      { ...both, origin: moved(d, thicker), x, from, to },
      { ...both, origin: moved(b, -thicker), x: [-x[0], -x[1]], from: width - to, to: width - from },
    ];
  };
  const thinner = thinnerParts(one, pieces).map(({ thickness, from, to }) => sides(thickness, from, to));
  return [sides(deepest, 0, width), ...thinner].flat();
}

/** Returns the interval on the outer face through which light in directions k0 to k1 can reach the glass's part anywhere in the wall. */
export function entryOf({ width, thickness, thicker, from, to }: Glass, k0: number, k1: number): [Mm, Mm] {
  if (thicker === 0) return [0, width];
  const deep = thickness + thicker;
  return [
    Math.max(0, from - Math.max(k1 * deep, -k0 * thicker)),
    Math.min(width, to + Math.max(-k0 * deep, k1 * thicker)),
  ];
}

/** Converts a point of the plan to the axes of a glass, mm. */
export function toGlass({ origin, x }: Glass, p: XY): XY {
  const [dx, dy] = [p[0] - origin[0], p[1] - origin[1]];
  return [dx * x[0] + dy * x[1], dy * x[0] - dx * x[1]];
}

/** Converts a point in the axes of a glass to the plan, mm. */
export function fromGlass({ origin, x }: Glass, [u, v]: XY): XY {
  return [origin[0] + u * x[0] - v * x[1], origin[1] + u * x[1] + v * x[0]];
}

/** Beams of similar direction and altitude. */
export interface Sheaf {
  /** Least and greatest k. */
  readonly k0: number;
  readonly k1: number;
  /** Distance on the plan in which a beam falls by 1, least and greatest. */
  readonly l0: number;
  readonly l1: number;
}

/** Beams closer to the direction of the wall than this do not enter, degrees: 20 m along the wall they are 0.4 mm from its face. */
const STEEPEST: Deg = 89.999;
/** Altitudes are kept away from the horizontal and the vertical, degrees. */
const FLAT: Deg = 0.01;
const RADIANS = Math.PI / 180;

/**
 * Returns the beams of the sun that reach one side of an opening, column by column, with k ascending; one list per band of
 * altitudes.
 */
export function columnSheaves(glass: Glass, sky: Sky, north: Deg, least: Deg): readonly (readonly Sheaf[])[] {
  const inward = Math.atan2(glass.x[0], -glass.x[1]) / RADIANS;
  // The angle from y toward x is `base` minus the azimuth.
  const base = inward - north - 90;
  const most = glass.thickness > 0 ? glass.width / glass.thickness : Number.POSITIVE_INFINITY;
  const lists: Sheaf[][] = [];
  for (let i = Math.floor((base + 90) / COLUMN); (i + 1) * COLUMN >= base - 90; i--) {
    const [low, high] = [Math.max(-STEEPEST, base - (i + 1) * COLUMN), Math.min(STEEPEST, base - i * COLUMN)];
    if (low >= high) continue;
    const [k0, k1] = [Math.max(-most, Math.tan(low * RADIANS)), Math.min(most, Math.tan(high * RADIANS))];
    if (k0 >= k1) continue;
    (sky[((i % COLUMNS) + COLUMNS) % COLUMNS] ?? []).forEach((band, index) => {
      if (band.high < least) return;
      const [bottom, top] = [Math.max(band.low, least, FLAT), Math.min(band.high, 90 - FLAT)];
      const [l0, l1] = [1 / Math.tan(Math.max(top, bottom) * RADIANS), 1 / Math.tan(bottom * RADIANS)];
      const sheaf = { k0, k1, l0, l1 };
      const list = lists[index];
      if (list) list.push(sheaf);
      else lists[index] = [sheaf];
    });
  }
  return lists.filter(Boolean);
}
