import { Clipper, FillRule, type Path64 } from 'clipper2-ts';
import type { Mm, XY } from '../../geometry/plan/model.ts';
import type { Ring } from '../../geometry/plane/types.ts';
import { sunPosition } from '../../geometry/sun/position.ts';
import type { Heights } from '../../geometry/sun/sun-floor.ts';
import type { SunTimes } from '../../geometry/sun/times.ts';

/*
 * The swept area of one room without inner walls, computed simply: the union of the light of the center of the sun at each minute. It
 * ignores the size of the disc and the time between minutes, so it is a little less than the true area.
 */

/** A window in coordinates of the room. */
export interface Pane {
  /** A corner of the inner face of its wall, from which `from` and `to` are measured. */
  readonly origin: XY;
  readonly along: XY;
  readonly inward: XY;
  readonly from: Mm;
  readonly to: Mm;
  readonly bottom: Mm;
  readonly top: Mm;
  readonly thickness: Mm;
}

const MINUTE = 60_000;
const RADIANS = Math.PI / 180;
/** Clipper works on whole numbers: hundredths of a mm. */
const GRID = 100;

/** Shapes united at a time, and then results: one union of all takes a hundred times as long. */
const GROUP = 16;

/** Returns the union as paths in hundredths of a mm, within the floor. */
export function unionOfMinutes(
  panes: readonly Pane[],
  floor: Ring,
  times: SunTimes,
  heights: Heights,
): readonly Path64[] {
  const suns = sunsOf(times);
  const light = panes.map((pane) =>
    united(suns.flatMap(({ travel, rise }) => lightThrough(pane, travel, rise, heights) ?? [])),
  );
  return Clipper.intersect(united(light), [pathOf(floor)], FillRule.NonZero);
}

/** Direction of light on the plan, and its fall per length, for each minute with sun. */
function sunsOf({ start, end, latitude, longitude, horizon, north }: SunTimes) {
  const suns: { readonly travel: XY; readonly rise: number }[] = [];
  for (let at = start; at <= end; at += MINUTE) {
    const { azimuth, altitude } = sunPosition(at, latitude, longitude);
    const bearing = (north + azimuth) * RADIANS;
    if (altitude >= horizon)
      suns.push({ travel: [-Math.sin(bearing), Math.cos(bearing)], rise: Math.tan(altitude * RADIANS) });
  }
  return suns;
}

function united(shapes: readonly (readonly Path64[])[]): Path64[] {
  if (shapes.length <= 1) return [...(shapes[0] ?? [])];
  const groups: Path64[][] = [];
  for (let i = 0; i < shapes.length; i += GROUP)
    groups.push(Clipper.union(shapes.slice(i, i + GROUP).flat(), FillRule.NonZero));
  return united(groups);
}

/** Returns the area, mm², of paths in hundredths of a mm. */
export const areaOfPaths = (paths: readonly Path64[]): number => Math.abs(Clipper.areaPaths([...paths])) / GRID ** 2;

export const pathOf = (ring: Ring): Path64 =>
  ring.map(([x, y]) => ({ x: Math.round(x * GRID), y: Math.round(y * GRID) }));

/** Light through both faces of the wall, between the two heights of the detector; null for none. */
function lightThrough(pane: Pane, travel: XY, rise: number, { base, tall }: Heights): readonly Path64[][] | null {
  const { along, inward, from, to, bottom, top, thickness } = pane;
  const into = travel[0] * inward[0] + travel[1] * inward[1];
  if (into < 1e-6) return null;
  const aside = (travel[0] * along[0] + travel[1] * along[1]) / into;
  const near = Math.max(0, ((bottom - base - tall) * into) / rise);
  const far = ((top - base) * into) / rise - thickness;
  const [low, high] = [Math.max(from, from + thickness * aside), Math.min(to, to + thickness * aside)];
  if (near >= far || low >= high) return null;
  const at = (u: Mm, v: Mm): XY => [
    pane.origin[0] + along[0] * (u + v * aside) + inward[0] * v,
    pane.origin[1] + along[1] * (u + v * aside) + inward[1] * v,
  ];
  return [[pathOf([at(low, near), at(high, near), at(high, far), at(low, far)])]];
}
