import type { LevelModel, OpeningBody } from '../level/types.ts';
import type { XY } from '../plan/model.ts';
import { memoizeLatest } from '../plane/memoize.ts';
import { ringContains } from '../plane/ring.ts';
import type { Ring } from '../plane/types.ts';
import { type Glass, obstructionOf, sidesOf, toGlass } from './glass.ts';
import { glazedOpenings } from './glazed.ts';
import { DISC_RADIUS, sunPosition } from './position.ts';
import type { Heights, SweptArea } from './sun-floor.ts';
import type { SunSpan } from './sun-hours.ts';
import type { SunTimes } from './times.ts';

/** Time between two computed positions of the sun, ms, unless the exposure would need more than `MOST_LOOKS` of them. */
const EVERY = 60_000;
const MOST_LOOKS = 9000;
const RADIANS = Math.PI / 180;
/** Rounding, mm. */
const TOUCH = 1e-3;

/** The position of the sun at an instant. */
interface Sun {
  readonly at: number;
  /** Bearing on the page, clockwise from up, radians. */
  readonly bearing: number;
  readonly altitude: number;
}

/** The middle of the disc and four points of its edge, as fractions of its radius. */
const DISC: readonly (readonly [across: number, up: number])[] = [
  [0, 0],
  [0, 1],
  [0, -1],
  [1, 0],
  [-1, 0],
];

/**
 * Returns when direct sun is on a spot between two heights, in spans accurate to a minute, or to 1/9000 of a longer exposure. Considers only
 * openings whose swept areas contain the spot. For display: no verdict depends on it.
 */
export function sunAtSpot(
  model: LevelModel,
  times: SunTimes,
  heights: Heights,
  areas: readonly SweptArea[],
  spot: XY,
): readonly SunSpan[] {
  const ids = new Set(
    areas.filter(({ rings }) => rings.some((ring) => ringContains(ring, spot))).map(({ opening }) => opening),
  );
  const panes = glazedOpenings(model)
    .filter(({ opening }) => ids.has(opening.id))
    .flatMap((body) => sidesOf(body, model.pieces).map((glass) => ({ glass, hidden: obstructionOf(glass.opening) })));
  if (panes.length === 0) return [];
  const every = everyOf(times);
  const spans: SunSpan[] = [];
  for (const sun of sunsOf(times)) {
    const isLit = panes.some(
      ({ glass, hidden }) => sun.altitude >= hidden && isLitBy(model, glass, heights, spot, sun),
    );
    if (!isLit) continue;
    const last = spans[spans.length - 1];
    const end = Math.min(times.end, sun.at + every);
    if (last && last.end >= sun.at) spans[spans.length - 1] = { start: last.start, end };
    else spans.push({ start: sun.at, end });
  }
  return spans;
}

const everyOf = ({ start, end }: SunTimes): number => Math.max(EVERY, (end - start) / MOST_LOOKS);

/** Returns the positions of the sun above the horizon of the site. */
const sunsOf = memoizeLatest((times: SunTimes): readonly Sun[] => {
  const { latitude, longitude, start, end, north, horizon } = times;
  const suns: Sun[] = [];
  for (let at = start; at <= end; at += everyOf(times)) {
    const { azimuth, altitude } = sunPosition(at, latitude, longitude);
    if (altitude >= horizon) suns.push({ at, bearing: (azimuth + north) * RADIANS, altitude });
  }
  return suns;
}, Object.values);

function isLitBy(model: LevelModel, glass: Glass, heights: Heights, spot: XY, sun: Sun): boolean {
  return DISC.some(([across, up]) => {
    const altitude = (sun.altitude + up * DISC_RADIUS) * RADIANS;
    const bearing = sun.bearing + (across * DISC_RADIUS * RADIANS) / Math.cos(altitude);
    return isLitFrom(model, glass, heights, spot, [Math.sin(bearing), -Math.cos(bearing)], Math.tan(altitude));
  });
}

/** Returns whether a ray from a spot toward the sun passes through a glass, and otherwise only through open doors. */
function isLitFrom(
  { pieces, joints, openings }: LevelModel,
  glass: Glass,
  heights: Heights,
  spot: XY,
  toward: XY,
  rise: number,
): boolean {
  const [x, y] = toGlass(glass, spot);
  const away: XY = toGlass({ ...glass, origin: [0, 0] }, toward);
  if (y < 0 || away[1] >= -1e-9) return false;
  const inner = y / -away[1];
  const outer = (y + glass.thickness) / -away[1];
  const range = passing(glass, heights, [x + away[0] * inner, x + away[0] * outer], inner, outer, rise, -away[1]);
  if (!range) return false;
  let [least, most] = range;
  for (const { body } of [...pieces, ...joints]) {
    const met = crossing(body, spot, toward);
    if (!met || met[1] < TOUCH || met[1] - met[0] < TOUCH) continue;
    if (met[0] > inner - TOUCH && met[1] < outer + TOUCH) continue;
    if (met[0] > outer - TOUCH) return false;
    const [from, to] = [Math.max(0, met[0]), Math.min(met[1], inner)];
    if (to - from < TOUCH) continue;
    const door = openings.find((each) => !each.outside && isThrough(each, spot, toward, from, to));
    if (!door) return false;
    least = Math.max(least, door.opening.bottom - from * rise);
    most = Math.min(most, door.opening.top - to * rise);
    if (least > most) return false;
  }
  return true;
}

function isThrough({ body }: OpeningBody, spot: XY, toward: XY, from: number, to: number): boolean {
  const met = crossing(body, spot, toward);
  return met !== null && met[0] <= from + TOUCH && met[1] >= to - TOUCH;
}

/** Returns the least and the greatest height at the spot of light that passes both faces of the wall and the overhang; null for none. */
function passing(
  { opening: { bottom, top, shade }, width }: Glass,
  { base, tall }: Heights,
  crossed: readonly number[],
  inner: number,
  outer: number,
  rise: number,
  inward: number,
): [number, number] | null {
  if (crossed.some((at) => at < 0 || at > width)) return null;
  const overhang = typeof shade === 'object' ? shade?.overhang : undefined;
  const roof = overhang ? top + overhang.above - (outer + overhang.depth / inward) * rise : Number.POSITIVE_INFINITY;
  const least = Math.max(base, bottom - inner * rise);
  const most = Math.min(base + tall, top - outer * rise, roof);
  return least <= most ? [least, most] : null;
}

/** Returns where a ray enters and leaves a convex ring, as multiples of its direction from its start; null if it misses the ring. */
function crossing(ring: Ring, [x, y]: XY, [dx, dy]: XY): [number, number] | null {
  let [from, to] = [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY];
  let area = 0;
  for (let i = 0; i < ring.length; i++) {
    const [a, b] = [ring[i] as XY, ring[(i + 1) % ring.length] as XY];
    area += a[0] * b[1] - b[0] * a[1];
  }
  const turn = Math.sign(area);
  for (let i = 0; i < ring.length; i++) {
    const [a, b] = [ring[i] as XY, ring[(i + 1) % ring.length] as XY];
    // The outward normal, for either orientation of the ring.
    const [nx, ny] = [turn * (b[1] - a[1]), turn * (a[0] - b[0])];
    const [at, run] = [nx * (x - a[0]) + ny * (y - a[1]), nx * dx + ny * dy];
    if (Math.abs(run) < 1e-12) {
      if (at >= 0) return null;
      continue;
    }
    if (run < 0) from = Math.max(from, -at / run);
    else to = Math.min(to, -at / run);
  }
  return from < to ? [from, to] : null;
}
