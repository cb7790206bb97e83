import type { LevelModel, OpeningBody } from '../level/types.ts';
import type { Deg, Mm, XY } from '../plan/model.ts';
import { memoize } from '../plane/memoize.ts';
import { clockwiseOnScreen } from '../plane/ring.ts';
import type { Ring } from '../plane/types.ts';
import { type HeightLimit, type Scene, TooMuchLight, traceBeams } from './beams.ts';
import { cellsOf } from './cells.ts';
import { type FloorPlan, floorPlan } from './floor-edges.ts';
import { columnSheaves, fromGlass, type Glass, obstructionOf, sidesOf, toGlass } from './glass.ts';
import { glazedOpenings } from './glazed.ts';
import { Hulls } from './hulls.ts';
import { doorEdgesOf, doorSidesOf, type Edge, edgeFrom, turned } from './light-edges.ts';
import { mergedCells } from './merge.ts';
import { overlappingOpenings } from './overlapping.ts';
import { DISC_RADIUS, FIRST_INSTANT, LAST_INSTANT } from './position.ts';
import { Reach } from './reach.ts';
import { type Drop, sheafGroups } from './sheaves.ts';
import { type Sky, skyOf } from './sky.ts';
import type { Heights, Swept, SweptArea } from './sun-floor.ts';
import type { SunTimes } from './times.ts';

/** The parts of a level that its light depends on. */
type LitLevel = Pick<LevelModel, 'rooms' | 'openings' | 'pieces' | 'joints'>;

/** The longest exposure that is computed, milliseconds: a year and a month. */
const LONGEST = 396 * 86_400_000;

/** Returns the floor that direct sun crosses anywhere between the underside and the top of a detector. */
export function sweptArea(model: LitLevel, times: SunTimes, heights: Heights): Swept {
  const steps = sweptAreaSteps(model, times, heights);
  for (;;) {
    const { done, value } = steps.next();
    if (done) return value;
  }
}

/** Same as `sweptArea`, but yields after each opening, so that a page stays responsive. */
export function* sweptAreaSteps(model: LitLevel, times: SunTimes, heights: Heights): Generator<void, Swept> {
  const { start, end } = times;
  if (start < FIRST_INSTANT || end > LAST_INSTANT)
    return { state: 'unknown', reason: 'The sun is worked out for the years 1950 to 2100 only.' };
  if (end - start > LONGEST)
    return { state: 'unknown', reason: 'The sun is worked out for at most 13 months at a time.' };
  try {
    return { state: 'known', areas: yield* areasOf(model, times, heights) };
  } catch (error) {
    if (!(error instanceof TooMuchLight)) throw error;
    return { state: 'unknown', reason: 'This level has too many corners for its sunlight to be worked out.' };
  }
}

function* areasOf(model: LitLevel, times: SunTimes, heights: Heights): Generator<void, readonly SweptArea[]> {
  const skies = new Map<Deg, Sky>();
  const areas: SweptArea[] = [];
  for (const body of glazedOpenings(model)) {
    const cells = cellsThrough(model, body, times, heights, skies);
    if (cells.length > 0) areas.push({ opening: body.opening.id, rings: mergedCells(cells) });
    yield;
  }
  return areas;
}

/** Returns rings that cover the light of one opening; empty for an opening without glass, and if there is too much light to compute. */
export function openingLight(model: LitLevel, times: SunTimes, heights: Heights, id: string): readonly Ring[] {
  const body = glazedOpenings(model).find(({ opening }) => opening.id === id);
  try {
    return body ? cellsThrough(model, body, times, heights, new Map()) : [];
  } catch (error) {
    if (!(error instanceof TooMuchLight)) throw error;
    return [];
  }
}

/** `skies` caches the sky by the least altitude that counts, for use by several openings. */
function cellsThrough(
  model: LitLevel,
  body: OpeningBody,
  times: SunTimes,
  heights: Heights,
  skies: Map<Deg, Sky>,
): readonly Ring[] {
  const { opening } = body;
  if (opening.shade === 'covered' || opening.shade === 'well') return [];
  // Light counts down to a disc radius below the obstruction, whether the obstruction hides light below it or discs with their middle below it.
  const hidden = obstructionOf(opening) - DISC_RADIUS;
  const least = Math.max(times.horizon, hidden);
  const sky = skies.get(least) ?? skyOf(times, least);
  skies.set(least, sky);
  const plan = floorsOf(model.rooms)(model.openings);
  const index = model.openings.indexOf(body);
  return sidesOf(body, model.pieces).flatMap((glass) =>
    lightOf(model, plan, glass, index, sky, times, hidden, heights),
  );
}

const floorsOf = memoize((rooms: LevelModel['rooms']) =>
  memoize((openings: LevelModel['openings']) => floorPlan({ rooms, openings })),
);

const overlapsIn = memoize((openings: LevelModel['openings']) => {
  const found = new Map<number, readonly number[]>();
  return (opening: number): readonly number[] => {
    const known = found.get(opening) ?? overlappingOpenings(openings, opening);
    found.set(opening, known);
    return known;
  };
});

function lightOf(
  model: LitLevel,
  plan: FloorPlan,
  glass: Glass,
  index: number,
  sky: Sky,
  times: SunTimes,
  hidden: Deg,
  heights: Heights,
): readonly Ring[] {
  const scene = sceneOf(model, plan, glass, heights);
  const isEntered =
    scene.overlapping(index).length > 0 || scene.doorEdges(index).some(({ room, ny }) => room >= 0 && ny > 0);
  if (!isEntered || glass.opening.top <= heights.base) return [];
  const most = 1 + Math.max(...plan.rooms.flatMap((edges) => edges.map(({ a }) => toGlass(glass, a)[1])));
  const drops = dropsOf(model, glass, heights);
  const hulls = new Hulls();
  const reach = new Reach(glass, heights);
  for (const columns of columnSheaves(glass, sky, times.north, hidden)) {
    for (const sheaf of sheafGroups(reach, columns, drops, most)) {
      const far = Math.min(sheaf.far, most);
      traceBeams(scene, index, sheaf, far, (strip) => {
        for (const cell of cellsOf(strip, sheaf.parts, reach, far)) hulls.add(cell);
      });
    }
  }
  return hulls.rings().map((ring) => ring.map((p) => fromGlass(glass, p)));
}

function sceneOf(model: LitLevel, plan: FloorPlan, glass: Glass, heights: Heights): Scene {
  const { openings } = model;
  const rooms = new Map<number, readonly Edge[]>();
  const doors = new Map<number, readonly Edge[]>();
  const sides = new Map<number, readonly Edge[]>();
  const cached = (map: Map<number, readonly Edge[]>, index: number, build: () => readonly Edge[]) => {
    const found = map.get(index) ?? build();
    map.set(index, found);
    return found;
  };
  return {
    glass,
    plan,
    roomEdges: (room) =>
      cached(rooms, room, () =>
        (plan.rooms[room] ?? []).map(({ a, b, openings: at }) =>
          edgeFrom(toGlass(glass, a), toGlass(glass, b), at, room),
        ),
      ),
    doorEdges: (opening) =>
      cached(doors, opening, () => doorEdgesOf(glass, openings[opening]?.body ?? [], plan, opening)),
    overlapping: overlapsIn(openings),
    doorSides: (opening) => cached(sides, opening, () => doorSidesOf(glass, openings[opening]?.body ?? [])),
    isOpenAtDetector: (index) => {
      const opening = openings[index]?.opening;
      return !opening || (opening.top >= heights.base && opening.bottom <= heights.base + heights.tall);
    },
    outdoors: outdoorFaces(model, glass),
    limitsOf: (opening, enters, leaves) =>
      dropsAt(openings[opening]?.opening, glass, heights).map(
        (drop): HeightLimit => ({ ...drop, edge: drop.bound === 'below' ? enters : leaves }),
      ),
  };
}

/** A wall that extends less than this beyond the outer face shades nothing, mm: joints, and walls drawn over each other. */
const STANDS_OUT: Mm = 1;

/**
 * Returns the faces of outside walls in front of a glass, with the wall on their right. Walls are opaque over their whole height, which
 * the plan does not limit. Inside walls are behind the glass.
 */
function outdoorFaces({ pieces, joints }: LitLevel, glass: Glass): readonly Edge[] {
  return [...pieces, ...joints]
    .filter(({ outside }) => outside)
    .map(({ body }) => clockwiseOnScreen(body.map((p) => turned(toGlass(glass, p)))))
    .filter((ring) => ring.some(([, y]) => y > glass.thickness + glass.thicker + STANDS_OUT))
    .flatMap((ring) => ring.map((a, i) => edgeFrom(a, ring[(i + 1) % ring.length] as XY, [], -1)));
}

function dropsOf({ openings }: Pick<LevelModel, 'openings'>, glass: Glass, heights: Heights): readonly Drop[] {
  return openings.flatMap(({ opening }) => (opening === glass.opening ? [] : dropsAt(opening, glass, heights)));
}

/** Returns the height limits of an opening. Light falls on its way in, so a head as high as the glass's or a sill below the detector sets none. */
function dropsAt(opening: Glass['opening'] | undefined, glass: Glass, { base, tall }: Heights): readonly Drop[] {
  if (!opening) return [];
  const drops: Drop[] = [];
  if (opening.top < glass.opening.top) drops.push({ drop: opening.top - base, bound: 'below' });
  if (opening.bottom > base + tall) drops.push({ drop: opening.bottom - base - tall, bound: 'above' });
  return drops;
}
