import { describe, expect, it } from 'vitest';
import { buildLevel } from '../../../geometry/level/build-level.ts';
import type { Level, PlanObject } from '../../../geometry/plan/model.ts';
import { emptyLevel, emptyPlan } from '../../../geometry/planfile/empty.ts';
import { caughtHeight, heightLane, isAllowed, sameLane, steppedHeight, stopsOf } from '../../../src/advice/heights.ts';
import { loop, rectangle } from '../../helpers/drawn.ts';

const INCH = 25.4;

describe('steppedHeight(from, way, step, unit, stops)', () => {
  it('goes from whole inch to whole inch, and to the next one from between', () => {
    expect(steppedHeight(30 * INCH, 'up', 'one', 'feet-inches', [])).toBeCloseTo(31 * INCH, 9);
    expect(steppedHeight(30 * INCH, 'down', 'one', 'feet-inches', [])).toBeCloseTo(29 * INCH, 9);
    expect(steppedHeight(30.4 * INCH, 'up', 'one', 'feet-inches', [])).toBeCloseTo(31 * INCH, 9);
    expect(steppedHeight(30.4 * INCH, 'down', 'one', 'feet-inches', [])).toBeCloseTo(30 * INCH, 9);
  });

  it('goes by the centimeter in meters', () => {
    expect(steppedHeight(762, 'up', 'one', 'metric', [])).toBe(770);
    expect(steppedHeight(770, 'down', 'one', 'metric', [])).toBe(760);
  });

  it('stops at a table top between two inches, from below and from above, and goes on from it', () => {
    const stops = [28.75 * INCH];
    expect(steppedHeight(28 * INCH, 'up', 'one', 'feet-inches', stops)).toBe(28.75 * INCH);
    expect(steppedHeight(28.75 * INCH, 'up', 'one', 'feet-inches', stops)).toBeCloseTo(29 * INCH, 9);
    expect(steppedHeight(29 * INCH, 'down', 'one', 'feet-inches', stops)).toBe(28.75 * INCH);
    expect(steppedHeight(28.75 * INCH, 'down', 'one', 'feet-inches', stops)).toBeCloseTo(28 * INCH, 9);
  });

  it('takes half feet and decimeters past every stop', () => {
    expect(steppedHeight(30 * INCH, 'up', 'many', 'feet-inches', [31 * INCH])).toBeCloseTo(36 * INCH, 9);
    expect(steppedHeight(762, 'down', 'many', 'metric', [760])).toBe(700);
  });
});

describe('caughtHeight(at, unit, stops)', () => {
  it('stands at the nearest stop within 20 mm, else at a whole step', () => {
    expect(caughtHeight(745, 'metric', [736.6, 900])).toBe(736.6);
    expect(caughtHeight(745, 'metric', [736.6, 750])).toBe(750);
    expect(caughtHeight(758, 'metric', [736.6])).toBe(760);
    expect(caughtHeight(765, 'feet-inches', [])).toBeCloseTo(30 * INCH, 9);
  });
});

describe('heightLane(plan, model, size, at)', () => {
  const desk: PlanObject = {
    id: 't',
    name: 'Desk',
    shape: { box: { center: [1500, 1500], width: 1200, depth: 600, turn: 0 } },
    bottom: 0,
    top: 736.6,
  };
  const walls = loop('a', rectangle(-100, -100, 8200, 8200));
  const rooms = [{ id: 'r', name: 'Den', use: 'den', at: [5, 5] }] as const;
  const level: Level = { ...emptyLevel('L1'), walls, rooms, objects: [desk] };
  const lane = (at: readonly [number, number]) =>
    heightLane({ ...emptyPlan(), levels: [level] }, buildLevel(level), { radius: 50.8, tall: 25.4 }, at);

  it('over a desk begins at its top, which carries', () => {
    const over = lane([1500, 1500]);
    expect(over.carrier).toEqual({ name: 'the desk', top: 736.6 });
    // 6 ft less an inch.
    expect(stopsOf(over)).toEqual([736.6, 71 * INCH, 736.6]);
    expect([736.5, 736.6, 1000, 71 * INCH].map((base) => isAllowed(over, base))).toEqual([true, true, true, true]);
    expect([736.4, 71 * INCH + 0.2].map((base) => isAllowed(over, base))).toEqual([false, false]);
  });

  it('on the open floor nothing carries', () => expect(lane([5000, 5000]).carrier).toBeNull());

  it('too near a wall has no height at all', () => {
    expect(lane([200, 5000])).toMatchObject({ intervals: [], words: [] });
  });

  it('is the same over all of the desk, and another one beside it', () => {
    expect(sameLane(lane([1500, 1500]), lane([1520, 1500]))).toBe(true);
    expect(sameLane(lane([1500, 1500]), lane([4000, 4000]))).toBe(false);
  });
});
