import type { EditResult } from '../../../geometry/edit/index.ts';
import type { Detector, Fixture, Level, Opening, Plan, PlanObject, Wall, XY } from '../../../geometry/plan/model.ts';
import { emptyLevel, emptyPlan } from '../../../geometry/planfile/empty.ts';

/** Returns the value deeply frozen, so that a mutation of an input throws. */
export function frozen<T>(value: T): T {
  if (typeof value === 'object' && value !== null) for (const each of Object.values(Object.freeze(value))) frozen(each);
  return value;
}
export function done(result: EditResult | { readonly ok: true; readonly plan: Plan }): Plan {
  if (!result.ok) throw new Error(result.reason);
  return result.plan;
}
export const reasonOf = (result: EditResult) => (result.ok ? 'done' : result.reason);
export function levelOf(plan: Plan): Level {
  const [level] = plan.levels;
  if (!level) throw new Error('no level');
  return level;
}

export const wall = (id: string, from: XY, to: XY): Wall => ({ id, from, to, thickness: 100, side: 'auto' });
export const window: Opening = {
  id: 'o1',
  wall: 'w1',
  kind: 'window',
  offset: 1000,
  width: 914.4,
  bottom: 1200,
  top: 2000,
};
export const detector: Detector = {
  id: 'd1',
  label: 'A1',
  at: [2000, 1500],
  base: 762,
  radius: 50.8,
  tall: 25.4,
  pair: null,
};
export const desk: PlanObject = {
  id: 't1',
  name: 'Desk',
  shape: { box: { center: [1000, 1000], width: 1200, depth: 600, turn: 0 } },
  bottom: 0,
  top: 762,
};
export const fan: Fixture = {
  id: 'f1',
  kind: 'portable-fan',
  name: '',
  shape: { circle: { center: [500, 500], radius: 200 } },
  bottom: 0,
  top: 900,
  stream: { direction: 350, spread: 30, reach: 1500 },
};
/** A room of 4 m by 3 m (w1 top, w2 right, w3 bottom, w4 left), and a partition w5 from the middle of the top to that of the bottom. */
export const plan: Plan = frozen({
  ...emptyPlan(),
  levels: [
    {
      ...emptyLevel('L1'),
      walls: [
        wall('w1', [0, 0], [4000, 0]),
        wall('w2', [4000, 0], [4000, 3000]),
        wall('w3', [4000, 3000], [0, 3000]),
        wall('w4', [0, 3000], [0, 0]),
        wall('w5', [2000, 0], [2000, 3000]),
      ],
      openings: [window, { ...window, id: 'o2', wall: 'w4' }],
      rooms: [{ id: 'r1', name: 'Den', use: 'den', at: [500, 500] }],
      fixtures: [fan],
      objects: [desk],
      detectors: [
        detector,
        { ...detector, id: 'd2', label: 'A2', pair: 'A' },
        { ...detector, id: 'd3', label: 'A3', pair: 'A' },
      ],
    },
  ],
  readings: [
    { detector: 'd1', value: 3, unit: 'pCi/L' },
    { detector: 'd2', value: 4, unit: 'pCi/L' },
  ],
} as const);
export const level = levelOf(plan);
export const wallOf = (edited: Plan, id: string) => levelOf(edited).walls.find((each) => each.id === id);
export const openingOf = (edited: Plan, id: string) => levelOf(edited).openings.find((each) => each.id === id);
