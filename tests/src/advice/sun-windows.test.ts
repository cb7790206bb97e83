import { describe, expect, it } from 'vitest';
import { buildLevel } from '../../../geometry/level/build-level.ts';
import type { Level, Opening, Plan } from '../../../geometry/plan/model.ts';
import { levelRegion } from '../../../geometry/region/level-region.ts';
import { type SunTake, sunWindowSteps } from '../../../src/advice/sun-windows.ts';
import { HEIGHTS, houseOf } from '../../helpers/sun-room.ts';

const VISIT = { start: '2003-10-17T06:00:00-07:00', end: '2003-10-19T20:00:00-07:00' };
const PROBE = { ...HEIGHTS, radius: 50.8 };
const SMALL: Opening = { id: 'small', wall: 'w0', kind: 'window', offset: 5000, width: 300, bottom: 1200, top: 1500 };
const rooms: Level['rooms'] = [{ id: 'r', name: 'Den', use: 'den', at: [3000, 4500] }];

function takeOf(plan: Plan): SunTake | null {
  const steps = sunWindowSteps(plan, buildLevel(plan.levels[0] as Level), PROBE);
  for (;;) {
    const { done, value } = steps.next();
    if (done) return value;
  }
}

const allowedOf = (plan: Plan) =>
  levelRegion(plan, buildLevel(plan.levels[0] as Level), PROBE).rooms.reduce((sum, { area }) => sum + area, 0);

describe('sunWindowSteps', () => {
  const plan = houseOf({ visit: VISIT, more: { rooms, openings: [SMALL] } });

  it('gives what covering a window brings, what takes most first', () => {
    const take = takeOf(plan) as SunTake;
    expect(take.allowed).toBeCloseTo(allowedOf(plan), 0);
    const [first, second] = take.windows.map(({ back }) => back) as [number, number];
    expect(first).toBeGreaterThanOrEqual(second);
    const glass = take.windows.find(({ id }) => id === 'glass');
    const covered = houseOf({ visit: VISIT, window: { shade: 'covered' }, more: { rooms, openings: [SMALL] } });
    expect(glass?.back).toBeCloseTo(allowedOf(covered) - allowedOf(plan), -1);
    expect(take.all).toBeGreaterThanOrEqual(first);
    expect(take.all).toBeGreaterThan(1e6);
  });

  it('knows nothing without times', () => expect(takeOf(houseOf({ visit: { start: null, end: null } }))).toBe(null));
});
