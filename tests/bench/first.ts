import { buildLevel } from '../../geometry/level/build-level.ts';
import type { Plan } from '../../geometry/plan/model.ts';
import { levelRegion } from '../../geometry/region/level-region.ts';
import { bestSpots } from '../../geometry/search/best-spots.ts';
import type { LevelSize, Size } from '../helpers/seeded-level.ts';
import { benchPlan, onlyLevel, PROBE } from './plans.ts';
import { noSamples, type Samples, timed } from './timing.ts';

/* The first work of a process: nothing is compiled or cached yet. Each call needs a new process. */

const region = (plan: Plan) => levelRegion(plan, buildLevel(onlyLevel(plan)), PROBE);
const spot = (plan: Plan) => bestSpots(plan, buildLevel(onlyLevel(plan)), PROBE);

type First = (size: Size | LevelSize) => Samples;

export const firstRegion: First = (size) => {
  const plan = benchPlan(size);
  return once(() => region(plan));
};

export const firstSpot: First = (size) => {
  const plan = benchPlan(size);
  region(plan);
  return once(() => spot(plan));
};

export const firstBoth: First = (size) => {
  const plan = benchPlan(size);
  return once(() => [region(plan), spot(plan)]);
};

function once(run: () => unknown): Samples {
  // Node loads its clocks at their first use, which must not be measured.
  timed(() => undefined, noSamples());
  const samples = noSamples();
  timed(run, samples);
  return samples;
}
