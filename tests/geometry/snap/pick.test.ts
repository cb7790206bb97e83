import { describe, expect, it } from 'vitest';
import type { Fixture, PlanObject, Shape } from '../../../geometry/plan/model.ts';
import { anchorOf, extentBetween, hitsAt, itemsWithin, jambs } from '../../../geometry/snap/pick.ts';
import { boxWalls, levelOf } from '../../helpers/level-of.ts';

const object = (id: string, shape: Shape): PlanObject => ({ id, name: id, shape, bottom: 0, top: 700 });
const fixture = (id: string, shape: Shape): Fixture => ({
  id,
  kind: 'floor-drain',
  name: '',
  shape,
  bottom: 0,
  top: 0,
  stream: null,
});

const level = levelOf({
  walls: boxWalls(0, 0, 6000, 4000),
  openings: [{ id: 'o1', wall: 'w1', kind: 'window', offset: 1000, width: 800, bottom: 1200, top: 2000 }],
  objects: [object('t1', { box: { center: [3000, 2000], width: 1200, depth: 600, turn: 0 } })],
  fixtures: [fixture('f1', { circle: { center: [3200, 2100], radius: 75 } })],
  rooms: [{ id: 'r1', name: 'Den', use: 'den', at: [1500, 3000] }],
  detectors: [{ id: 'd1', label: 'A1', at: [3000, 2000], base: 762, radius: 50.8, tall: 25.4, pair: null }],
});
const ids = (x: number, y: number, reach = 20) => hitsAt(level, [x, y], reach).map(({ id }) => id);

describe('hitsAt', () => {
  it.each([
    { name: 'the detector on a desk before the desk', x: 3030, y: 2000, expected: ['d1', 't1'] },
    { name: 'the drain under the desk before the desk', x: 3200, y: 2100, expected: ['f1', 't1'] },
    { name: 'the desk alone', x: 2500, y: 1800, expected: ['t1'] },
    { name: 'a window before its wall', x: 1400, y: 30, expected: ['o1', 'w1'] },
    { name: 'the wall beside the window', x: 500, y: 30, expected: ['w1'] },
    { name: 'both walls in a corner', x: 0, y: 0, expected: ['w1', 'w4'] },
    { name: 'a room name', x: 1520, y: 3010, expected: ['r1'] },
    { name: 'open floor', x: 5000, y: 3000, expected: [] },
  ])('finds $name', ({ x, y, expected }) => {
    expect(ids(x, y)).toEqual(expected);
  });

  it('reaches as far beyond an edge as it is told', () => {
    // The desk ends at x = 3600, the wall's face at y = 50.
    expect(ids(3619, 2000)).toEqual(['t1']);
    expect(ids(3621, 2000)).toEqual([]);
    expect(ids(5000, 69)).toEqual(['w1']);
    expect(ids(5000, 71)).toEqual([]);
  });

  it('finds a turned box where it is, not where it was', () => {
    const turned = levelOf({ objects: [object('t1', { box: { center: [0, 0], width: 1000, depth: 100, turn: 90 } })] });
    expect(hitsAt(turned, [0, 480], 1).map(({ id }) => id)).toEqual(['t1']);
    expect(hitsAt(turned, [480, 0], 1)).toEqual([]);
  });
});

describe('itemsWithin', () => {
  it('takes what lies wholly in the frame, drawn from any corner', () => {
    expect(itemsWithin(level, extentBetween([3700, 2500], [2300, 1600]))).toEqual(['f1', 't1', 'd1']);
    expect(itemsWithin(level, extentBetween([2500, 1600], [3700, 2500]))).toEqual(['f1', 'd1']);
  });

  it('takes a wall with its thickness', () => {
    expect(itemsWithin(level, extentBetween([-40, -50], [6050, 50]))).toEqual([]);
    expect(itemsWithin(level, extentBetween([-50, -50], [6050, 50]))).toEqual(['w1']);
  });
});

describe('jambs', () => {
  it('stand on the center-line, from the wall its first end on', () => {
    expect(jambs(level, level.openings[0] as (typeof level.openings)[0])).toEqual([
      [1000, 0],
      [1800, 0],
    ]);
  });

  it('are not there without a wall', () => {
    expect(jambs(levelOf({}), level.openings[0] as (typeof level.openings)[0])).toBeNull();
  });
});

describe('anchorOf', () => {
  it.each([
    ['w2', [6000, 2000]],
    ['o1', [1400, 0]],
    ['t1', [3000, 2000]],
    ['d1', [3000, 2000]],
    ['r1', [1500, 3000]],
    ['nobody', null],
  ])('of %s is %j', (id, at) => {
    expect(anchorOf(level, id)).toEqual(at);
  });
});
