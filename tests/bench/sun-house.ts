import type { Opening, Plan, Wall, XY } from '../../geometry/plan/model.ts';
import type { Ring } from '../../geometry/plane/types.ts';
import { emptyPlan } from '../../geometry/planfile/empty.ts';
import type { Pane } from './sun-minutes.ts';

/** One room of 10 m by 8 m on the inside with two windows in each wall, tested in March. */

const [WIDE, DEEP, THICKNESS] = [10_000, 8000, 200];
const WINDOW = { width: 1200, bottom: 900, top: 2100 };
const HOUR = 3_600_000;
const START = Date.parse('2026-03-07T18:00:00-05:00');
/** Distances from the corner of the room to the start of the windows of a wall, mm. */
const BEGIN = [1200, 5200];

export const SUN_FLOOR: Ring = [
  [0, 0],
  [WIDE, 0],
  [WIDE, DEEP],
  [0, DEEP],
];

/** Returns the house with an exposure of this many hours. */
export function sunHouse(hours: number): Plan {
  const plan = emptyPlan();
  const half = THICKNESS / 2;
  const corners = SUN_FLOOR.map(([x, y]): XY => [x === 0 ? -half : x + half, y === 0 ? -half : y + half]);
  const walls = corners.map(
    (from, i): Wall => ({
      id: `w${i}`,
      from,
      to: corners[(i + 1) % 4] as XY,
      thickness: THICKNESS,
      side: 'auto',
    }),
  );
  const openings = walls.flatMap(({ id }) =>
    BEGIN.map((at, n): Opening => ({ ...WINDOW, id: `${id}-${n}`, wall: id, kind: 'window', offset: at + half })),
  );
  return {
    ...plan,
    site: { ...plan.site, latitude: 41.2, longitude: -75.9, north: 15 },
    visit: { ...plan.visit, start: new Date(START).toISOString(), end: new Date(START + hours * HOUR).toISOString() },
    levels: plan.levels.map((level) => ({ ...level, walls, openings })),
  };
}

/** The same windows for the minute-by-minute computation. */
export const SUN_PANES: readonly Pane[] = SUN_FLOOR.flatMap((origin, i) => {
  const [x, y] = SUN_FLOOR[(i + 1) % 4] as XY;
  const long = Math.hypot(x - origin[0], y - origin[1]);
  const along: XY = [(x - origin[0]) / long, (y - origin[1]) / long];
  const { width, ...heights } = WINDOW;
  return BEGIN.map(
    (from): Pane => ({
      ...heights,
      origin,
      along,
      inward: [-along[1], along[0]],
      from,
      to: from + width,
      thickness: THICKNESS,
    }),
  );
});
