import { describe, expect, it } from 'vitest';
import { buildLevel } from '../../../geometry/level/build-level.ts';
import type { Detector, Level, XY } from '../../../geometry/plan/model.ts';
import { type LateStart, lateStartSteps, lateStartWords } from '../../../src/advice/late-start.ts';
import { howMany } from '../../helpers/how-many.ts';
import { HEIGHTS, houseOf } from '../../helpers/sun-room.ts';

const VISIT = { start: '2003-10-17T06:00:00-07:00', end: '2003-10-19T20:00:00-07:00' };
const rooms: Level['rooms'] = [{ id: 'r', name: 'Den', use: 'den', at: [3000, 4500] }];

function lateStartAt(at: XY): LateStart | null {
  const plan = houseOf({ visit: VISIT, more: { rooms } });
  const detector: Detector = { id: 'd', label: '', at, ...HEIGHTS, radius: 50.8, pair: null, support: null };
  const steps = lateStartSteps(plan, buildLevel(plan.levels[0] as Level), detector);
  for (;;) {
    const { done, value } = steps.next();
    if (done) return value;
  }
}

describe('a later start', () => {
  it('changes nothing in the sun, nor far from it', () => {
    expect(lateStartAt([2500, 1000])).toEqual({ days: null, verdict: 'blocked' });
  });

  it('flips a spot that the sun of autumn reaches day by day', () => {
    // The sun stands lower every day, and reaches farther in: somewhere on the way from it a week changes the verdict.
    const found = Array.from({ length: howMany(15, 60) }, (_, i) => lateStartAt([2500, 2600 + howMany(160, 40) * i]));
    const flips = found.filter((one) => one?.days);
    expect(flips.length).toBeGreaterThan(0);
    for (const one of flips) {
      expect(['blocked', 'tight']).toContain(one?.verdict);
      expect(one && lateStartWords(one)).toContain('for the planned days only');
    }
    expect(found.at(-1)).toEqual({ days: null, verdict: 'clear' });
  });
});
