import { checkDetector } from '../../geometry/check/check-detector.ts';
import { buildLevel } from '../../geometry/level/build-level.ts';
import type { Plan, XY } from '../../geometry/plan/model.ts';
import { levelRegion } from '../../geometry/region/level-region.ts';
import { nearestSpot } from '../../geometry/region/nearest.ts';
import { bestPairs } from '../../geometry/search/best-pairs.ts';
import { bestSpots } from '../../geometry/search/best-spots.ts';
import { marginField } from '../../geometry/search/field/margin-field.ts';
import { samplePlan } from '../helpers/sample-files.ts';
import { type LevelSize, type Size, seededRandom } from '../helpers/seeded-level.ts';
import { changedWalls, movedThings } from './edits.ts';
import { benchPlan, onlyLevel, PROBE } from './plans.ts';
import { type Effort, measure, type Samples } from './timing.ts';

type Timed = (size: Size | LevelSize, effort: Effort) => Samples;

const regionOf = (plan: Plan) => levelRegion(plan, buildLevel(onlyLevel(plan)), PROBE);

/** Region from the drawing only: rooms from walls, zones, boundary, rings, area. Nothing is cached. */
export const fromScratch: Timed = (size, effort) => {
  const next = copiesOf(benchPlan(size));
  return measure(effort, () => {
    const plan = next();
    return () => regionOf(plan);
  });
};

/** The same with the rooms ready, as the libraries have them. */
export const roomsReady: Timed = (size, effort) => onFreshModels(size, effort, levelRegion);

/** Rooms from walls only. */
export const roomsFromWalls: Timed = (size, effort) => {
  const next = copiesOf(benchPlan(size));
  return measure(effort, () => {
    const level = onlyLevel(next());
    return () => buildLevel(level);
  });
};

/** Region again after one thing was moved, with everything cached. */
export const thingMoved: Timed = (size, effort) => afterEdits(movedThings(benchPlan(size)), effort);

/** Region again after one wall was changed: rooms and walls are computed again. */
export const wallChanged: Timed = (size, effort) => afterEdits(changedWalls(benchPlan(size)), effort);

function afterEdits(edited: () => Plan, effort: Effort): Samples {
  return measure(effort, () => {
    const plan = edited();
    return () => regionOf(plan);
  });
}

/** Queries per measured run: the clock is too coarse for one. */
const QUERIES = 20_000;

/** One margin query at a random place of a floor, with its lists built. */
export const marginQuery: Timed = (size, effort) => {
  const plan = benchPlan(size);
  const model = buildLevel(onlyLevel(plan));
  const field = marginField(plan, model, PROBE);
  const places = randomPlaces(plan, QUERIES);
  const ask = () => {
    let sum = 0;
    for (const [x, y] of places) sum += field.margin(x, y);
    return sum;
  };
  ask();
  return measure(effort, () => ask, undefined, QUERIES);
};

/** The best spot of a level for a detector, with the lists built during the search; rooms are ready. */
export const bestSpot: Timed = (size, effort) => onFreshModels(size, effort, bestSpots);

/** The best place for two side by side, measured in the same way. */
export const bestPair: Timed = (size, effort) => onFreshModels(size, effort, bestPairs);

type Question = typeof levelRegion | typeof bestSpots | typeof bestPairs;

/** Times a query on a level with its rooms ready and nothing else cached. */
function onFreshModels(size: Size | LevelSize, effort: Effort, ask: Question): Samples {
  const next = copiesOf(benchPlan(size));
  return measure(effort, () => {
    const plan = next();
    const model = buildLevel(onlyLevel(plan));
    return () => ask(plan, model, PROBE);
  });
}

/** Frames in which a detector is dragged once across the sheet. */
const FRAMES = 200;

/** The engine's part of one frame while a detector is dragged over the largest sample: its checks, and the nearest spot. */
export const dragFrame: Timed = (_, effort) => {
  const plan = samplePlan('05-boarding-house');
  const level = onlyLevel(plan);
  const model = buildLevel(level);
  const region = levelRegion(plan, model, PROBE);
  const [from, to] = [level.detectors[0], level.detectors[5]];
  if (!from || !to) throw new Error('the sample has lost its detectors');
  let frame = 0;
  return measure(effort, () => {
    const t = (frame++ % FRAMES) / FRAMES;
    const at: XY = [from.at[0] + (to.at[0] - from.at[0]) * t, from.at[1] + (to.at[1] - from.at[1]) * t];
    const detector = { ...from, at };
    return () => [checkDetector(plan, model, detector), nearestSpot(region, at)];
  });
};

/**
 * Returns a generator of copies that are new to the engine, so that nothing is cached. If the garbage collector can be called, it moves
 * each copy to the old generation first: an open drawing is old, and moving it is not part of the work.
 */
function copiesOf(plan: Plan): () => Plan {
  return () => {
    const copy = structuredClone(plan);
    for (let i = 0; i < 2; i++) globalThis.gc?.({ type: 'minor' });
    return copy;
  };
}

/** Places spread over the rooms. */
function randomPlaces(plan: Plan, count: number): XY[] {
  const random = seededRandom(11);
  const { rooms } = buildLevel(onlyLevel(plan));
  return Array.from({ length: count }, (): XY => {
    const ring = rooms[Math.floor(random() * rooms.length)]?.centerRings[0] ?? [];
    // A mean of corners with random weights is inside a convex room, and rarely outside another one.
    const weights = ring.map(() => -Math.log(random()));
    const whole = weights.reduce((sum, weight) => sum + weight, 0);
    const mean = (k: 0 | 1) => ring.reduce((sum, p, i) => sum + p[k] * ((weights[i] as number) / whole), 0);
    return [mean(0), mean(1)];
  });
}
