import { describe, expect, it } from 'vitest';
import { buildLevel } from '../../../geometry/level/build-level.ts';
import { describeHeights } from '../../../geometry/messages/heights.ts';
import type { Level, PlanObject } from '../../../geometry/plan/model.ts';
import { heightsAt } from '../../../geometry/search/heights.ts';
import { drawn, loop, planOf, rectangle } from '../../helpers/drawn.ts';

/** 2 in across, an inch tall. */
const PROBE = { radius: 25.4, tall: 25.4 };

function told(objects: readonly PlanObject[], rest: Partial<Level> = {}) {
  const walls = loop('a', rectangle(-100, -100, 8200, 8200));
  const level = drawn(walls, {
    rooms: [{ id: 'r', name: '', use: 'den', at: [5, 5] }],
    ceiling: 3000,
    objects,
    ...rest,
  });
  const plan = planOf(level);
  return heightsAt(plan, buildLevel(level), PROBE, [4000, 4000]).map((one) => describeHeights(one, plan, level));
}

function thing(name: string, bottom: number, top: number, x = 4000): PlanObject {
  return { id: name, name, shape: { box: { center: [x, 4000], width: 1000, depth: 1000, turn: 0 } }, bottom, top };
}

describe('describeHeights(interval, plan, level)', () => {
  it('says from where to where and what bounds it: 20 in, and 6 ft less its own inch', () => {
    expect(told([])).toEqual([
      {
        lowest: '1 ft 8 in',
        highest: '5 ft 11 in',
        below: 'height above the floor, 1 ft 8 in at the least',
        above: 'height above the floor, its top at 6 ft at the most',
      },
    ]);
  });

  it('names what carries it and what hangs above: 4 in and its own inch below a shelf at 48 in', () => {
    const [only] = told([thing('Desk', 0, 30 * 25.4), thing('Shelf', 48 * 25.4, 60 * 25.4)]).slice(0, 1);
    expect(only).toEqual({
      lowest: '2 ft 6 in',
      highest: '3 ft 7 in',
      below: 'it stands on the desk',
      above: '4 in clear of the shelf above it',
    });
  });

  it('keeps a foot below a low ceiling: 60 in less 12 less 1', () => {
    expect(told([], { ceiling: 60 * 25.4 })[0]).toMatchObject({
      highest: '3 ft 11 in',
      above: '1 ft below the ceiling',
    });
  });

  it('goes over the top of what stands too near', () => {
    expect(told([thing('Crate', 0, 40 * 25.4, 4000 + 500 + 50)])[0]).toMatchObject({
      lowest: '3 ft 4 in',
      below: 'clear over the top of the crate',
    });
  });

  it('rounds toward caution: a lower end up, an upper end down', () => {
    // 700 mm is 27.56 in: up to the next eighth, 2 ft 3 5/8 in. 1,100 − 25.4 − 101.6 is 38.31 in: 3 ft 2 1/4 in.
    expect(told([thing('Desk', 0, 700), thing('Shelf', 1100, 1200)])[0]).toMatchObject({
      lowest: '2 ft 3 5/8 in',
      highest: '3 ft 2 1/4 in',
    });
  });

  it('says a single height once', () => {
    // The gap between desk and shelf is exactly the height of the detector plus its 4 in.
    const [only] = told([thing('Desk', 0, 762), thing('Shelf', 762 + 25.4 + 101.6, 1000)]);
    expect(only).toMatchObject({ lowest: '2 ft 6 in', highest: null });
  });
});
