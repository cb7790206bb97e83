import type { Level, Opening, Plan, Wall, XY } from '../../geometry/plan/model.ts';
import { emptyPlan } from '../../geometry/planfile/empty.ts';
import { sunPosition } from '../../geometry/sun/position.ts';

export const INCH = 25.4;
export const HEIGHTS = { base: 30 * INCH, tall: INCH };
/** The instant and the place of the worked example of NREL/TP-560-34302: the sun is at 39.89° in the south. */
const NOON = '2003-10-17T12:30:30-07:00';
const SITE = { latitude: 39.742476, longitude: -105.1786 };
export const { azimuth, altitude } = sunPosition(Date.parse(NOON), SITE.latitude, SITE.longitude);
/** Site and north with which the sun is straight up the page at that instant. */
export const FACING = { ...SITE, north: -azimuth };

/** A room of 6 m by 5 m on the inside, its wall `w0` at the top of the page with its inner face at y = 0. */
export interface House {
  readonly site?: Partial<Plan['site']>;
  readonly visit?: Partial<Plan['visit']>;
  readonly window?: Partial<Opening>;
  readonly thickness?: number;
  readonly more?: Partial<Level>;
  /** Applied to every point. */
  readonly move?: (p: XY) => XY;
}

export function houseOf({ site, visit, window, thickness = 200, more = {}, move = (p) => p }: House = {}): Plan {
  const plan = emptyPlan();
  const half = thickness / 2;
  const corners: XY[] = [
    [-half, -half],
    [6000 + half, -half],
    [6000 + half, 5000 + half],
    [-half, 5000 + half],
  ];
  const wall = (id: string, from: XY, to: XY, thick: number): Wall => ({
    id,
    from: move(from),
    to: move(to),
    thickness: thick,
    side: 'auto',
  });
  const walls = corners.map((from, i) => wall(`w${i}`, from, corners[(i + 1) % 4] as XY, thickness));
  const glass: Opening = {
    id: 'glass',
    wall: 'w0',
    kind: 'window',
    offset: 2000 + half,
    width: 1000,
    bottom: 600,
    top: 84 * INCH,
    ...window,
  };
  const inner = (more.walls ?? []).map(({ id, from, to, thickness: thick }) => wall(id, from, to, thick));
  const level = {
    ...(plan.levels[0] as Level),
    ...more,
    walls: [...walls, ...inner],
    openings: [glass, ...(more.openings ?? [])],
  };
  return {
    ...plan,
    site: { ...plan.site, ...FACING, ...site },
    visit: { ...plan.visit, start: NOON, end: NOON, ...visit },
    levels: [level],
  };
}
