import { buildLevel } from '../../geometry/level/build-level.ts';
import type { Level, Wall, XY } from '../../geometry/plan/model.ts';
import { levelRegion } from '../../geometry/region/level-region.ts';
import { bestSpots } from '../../geometry/search/best-spots.ts';
import { drawn, loop, planOf, rectangle, wall } from '../helpers/drawn.ts';
import { PROBE } from './plans.ts';
import { type Effort, measure, type Samples } from './timing.ts';

/* Levels that no house has, but that a broken program or an error of a person may draw. */

const HOUSE = loop('h', rectangle(0, 0, 10_000, 8000));

const copies = (apart: number): Wall[] =>
  Array.from({ length: 1000 }, (_, i) => wall(`s${i}`, [2000, 2000 + i * apart], [8000, 2000 + i * apart]));

const star = (): Wall[] =>
  Array.from({ length: 1500 }, (_, i) => {
    const angle = (2 * Math.PI * i) / 1500;
    const tip: XY = [5000 + 3000 * Math.cos(angle), 4000 + 3000 * Math.sin(angle)];
    return wall(`s${i}`, [5000, 4000], tip);
  });

/** Times rooms, region and best spot, computed from the drawing only. */
const wholeOf =
  (walls: readonly Wall[]) =>
  (_: unknown, effort: Effort): Samples => {
    const level: Level = drawn([...HOUSE, ...walls], {
      rooms: [{ id: 'r', name: '', use: 'family-room', at: [1000, 1000] }],
    });
    return measure({ ...effort, warmUpMs: 0 }, () => {
      const plan = planOf(structuredClone(level));
      return () => {
        const model = buildLevel(plan.levels[0] as Level);
        return [levelRegion(plan, model, PROBE), bestSpots(plan, model, PROBE)];
      };
    });
  };

export const equalWalls = wholeOf(copies(0));
export const wallsAHairApart = wholeOf(copies(1e-6));
export const wallsAtOneNode = wholeOf(star());
