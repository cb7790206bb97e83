import { describe, expect, it } from 'vitest';
import { buildLevel } from '../../../geometry/level/build-level.ts';
import type { Level, PlanObject } from '../../../geometry/plan/model.ts';
import type { Probe } from '../../../geometry/region/types.ts';
import { bestSpots } from '../../../geometry/search/best-spots.ts';
import { limitCheck } from '../../../geometry/search/limit-check.ts';
import { drawn, loop, planOf, rectangle } from '../../helpers/drawn.ts';
import { SAMPLE_NAMES, samplePlan } from '../../helpers/sample-files.ts';

const PROBE: Probe = { base: 762, radius: 50, tall: 25 };

/** Returns a cupboard of 1 m by 1 m, as high as a person. */
function cupboard(id: string, x: number): PlanObject {
  return {
    id,
    name: '',
    shape: { box: { center: [x, 4000], width: 1000, depth: 1000, turn: 0 } },
    bottom: 0,
    top: 1800,
  };
}

function den(objects: readonly PlanObject[]): Level {
  const walls = loop('a', rectangle(-100, -100, 8200, 8200));
  return drawn(walls, { rooms: [{ id: 'r', name: '', use: 'den', at: [5, 5] }], ceiling: 3000, objects });
}

describe('limitCheck(plan, model, probe, axes, limit)', () => {
  it('has the figures of the limit, and the line of measurement', () => {
    const level = den([cupboard('t', 4000)]);
    const limit = { rule: 'object', subject: 't', stream: false } as const;
    // The cupboard's side is at x = 3500: 1450 from a rim at 2050, and 4 in are required.
    const check = limitCheck(planOf(level), buildLevel(level), PROBE, [[2000, 4000]], limit);
    expect(check).toMatchObject({ subject: 't', measured: 1450, required: 101.6, verdict: 'clear' });
    expect(check?.witness).toEqual({ rim: [2050, 4000], subject: [3500, 4000] });
  });

  it('of several detectors tells the one with the least to spare', () => {
    const level = den([cupboard('t', 4000)]);
    const limit = { rule: 'object', subject: 't', stream: false } as const;
    const axes = [
      [1000, 4000],
      [3000, 4000],
    ] as const;
    expect(limitCheck(planOf(level), buildLevel(level), PROBE, axes, limit)?.measured).toBe(450);
  });

  it('midway between two cupboards names one of them, also when the checker keeps to the other', () => {
    const level = den([cupboard('t', 2000), cupboard('u', 6000)]);
    const model = buildLevel(level);
    for (const subject of ['t', 'u']) {
      const check = limitCheck(planOf(level), model, PROBE, [[4000, 4000]], { rule: 'object', subject, stream: false });
      expect(check?.margin).toBeCloseTo(1500 - 50 - 101.6, 9);
    }
  });

  it.each(SAMPLE_NAMES)('finds the limit of every good spot of %s, with the margin that was promised', (name) => {
    const plan = samplePlan(name);
    let told = 0;
    for (const level of plan.levels) {
      const model = buildLevel(level);
      for (const { at, margin, limitedBy } of bestSpots(plan, model, PROBE, { count: 5 })) {
        if (!limitedBy) continue;
        expect(limitCheck(plan, model, PROBE, [at], limitedBy)?.margin).toBeCloseTo(margin, 4);
        told++;
      }
    }
    expect(told).toBeGreaterThan(0);
  });
});
