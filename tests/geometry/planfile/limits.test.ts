import { describe, expect, it } from 'vitest';
import type { Level } from '../../../geometry/plan/model.ts';
import { describeFile, describeLimits, PLAN_LIMITS } from '../../../geometry/planfile/limits.ts';
import { detectorAt, drawn, planOf, wall } from '../../helpers/drawn.ts';

const walls = (count: number) => Array.from({ length: count }, (_, i) => wall(`w${i}`, [0, i], [9, i]));
const rooms = (count: number) =>
  Array.from({ length: count }, (_, i) => ({ id: `r${i}`, name: '', use: 'den', at: [0, i] }) as const);
const detectors = (count: number) => Array.from({ length: count }, (_, i) => detectorAt([i, 0], { id: `d${i}` }));
const words = (rest: Partial<Level>, more: readonly Level[] = []) => {
  const plan = planOf(drawn(rest.walls ?? [], rest));
  return describeLimits({ ...plan, levels: [...plan.levels, ...more] });
};

describe('describeLimits(plan)', () => {
  it.each([
    ['walls', { walls: walls(PLAN_LIMITS.walls) }],
    ['rooms', { rooms: rooms(PLAN_LIMITS.rooms) }],
    ['features', { detectors: detectors(PLAN_LIMITS.features) }],
  ])('says nothing of as many %s as there may be', (_, rest) => {
    expect(words(rest)).toBe('');
  });

  it.each([
    ['walls', { walls: walls(10_001) }, '10,001 walls', '10,000 walls'],
    ['rooms', { rooms: rooms(301) }, '301 rooms', '300 rooms'],
    ['features', { detectors: detectors(5001) }, '5,001 doors, windows and things', '5,000 doors, windows and things'],
  ])('names the limit of one more: %s', (_, rest, found, limit) => {
    expect(words(rest)).toBe(
      `The plan has ${found}. Stillspot is made for at most ${limit}: everything works, but slower.`,
    );
  });

  it('counts all levels together', () => {
    expect(words({ rooms: rooms(150) }, [drawn([], { rooms: rooms(151) })])).toContain('301 rooms');
  });

  it('stands after the unknown keys', () => {
    const plan = { ...planOf(drawn(walls(10_001))), flavor: 1 };
    expect(describeFile(plan)).toMatch(/not used\. The plan has 10,001 walls/);
  });
});
