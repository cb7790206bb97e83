import type { Level, Plan } from '../../geometry/plan/model.ts';
import { emptyPlan } from '../../geometry/planfile/empty.ts';
import type { Probe } from '../../geometry/region/types.ts';
import { type LevelSize, type Size, seededLevel } from '../helpers/seeded-level.ts';

/** A usual canister on a table, mm: 4 in across, 1 in tall, 30 in up. */
export const PROBE: Probe = { base: 762, radius: 50.8, tall: 25.4 };

/** Returns a plan of one seeded level. Every call makes new objects, so that nothing is cached from an earlier one. */
export function benchPlan(size: Size | LevelSize, seed = 1): Plan {
  return { ...emptyPlan(), levels: [seededLevel(size, seed)] };
}

export function onlyLevel({ levels: [level] }: Plan): Level {
  if (!level) throw new Error('the plan has no level');
  return level;
}

/** Returns the plan with this as its only level. */
export function withLevel(plan: Plan, level: Level): Plan {
  return { ...plan, levels: [level] };
}

/** Returns the size of a level with this number of features at the density of the huge one: 50 features to 3 rooms. */
export function sizeOf(features: number): LevelSize {
  const rooms = Math.max(1, Math.round((features * 3) / 50));
  const across = Math.ceil(Math.sqrt(rooms));
  return { across, down: Math.ceil(rooms / across), rooms, features };
}
