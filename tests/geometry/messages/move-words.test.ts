import { describe, expect, it } from 'vitest';
import { buildLevel } from '../../../geometry/level/build-level.ts';
import { compassPoint, describeWay, towardName } from '../../../geometry/messages/index.ts';
import type { Level } from '../../../geometry/plan/model.ts';
import { emptyLevel, emptyPlan } from '../../../geometry/planfile/empty.ts';

const wall = (id: string, from: [number, number], to: [number, number]) =>
  ({ id, from, to, thickness: 100, side: 'auto' }) as const;
/** 6 m by 4 m on the page; a desk to the right of the middle; a window in the wall on the left. */
const level: Level = {
  ...emptyLevel('L1'),
  walls: [
    wall('w1', [0, 0], [6000, 0]),
    wall('w2', [6000, 0], [6000, 4000]),
    wall('w3', [6000, 4000], [0, 4000]),
    wall('w4', [0, 4000], [0, 0]),
  ],
  openings: [{ id: 'o1', wall: 'w4', kind: 'window', offset: 1500, width: 1000, bottom: 900, top: 1500 }],
  rooms: [{ id: 'r1', name: 'Den', use: 'den', at: [3000, 2000] }],
  objects: [
    {
      id: 't1',
      name: 'Desk',
      shape: { box: { center: [4500, 2000], width: 600, depth: 1200, turn: 0 } },
      bottom: 0,
      top: 700,
    },
  ],
};
const model = buildLevel(level);
const room = model.rooms[0];
if (!room) throw new Error('the drawing of this test makes one room');

describe('towardName', () => {
  it.each([
    ['right, to the desk', 0, 0, 'toward the desk'],
    ['right, past the desk', 0, 2000, 'toward the east wall'],
    ['up the page', 270, 0, 'toward the north wall'],
    ['down the page', 90, 0, 'toward the south wall'],
    ['left, where the window is', 180, 0, 'toward the window'],
  ])('%s', (_name, direction, beyond, words) => {
    expect(towardName(model, [3000, 2000], direction, beyond, { north: 0 })).toBe(words);
  });

  it('names the compass point where nothing lies ahead', () => {
    expect(towardName(model, [9000, 2000], 0, 0, { north: 0 })).toBe('to the east');
  });
});

describe('compassPoint', () => {
  it.each([
    [270, 0, 'north'],
    [0, 0, 'east'],
    [45, 0, 'south-east'],
    [0, 90, 'north'],
    [270, 180, 'south'],
    [-90, 360, 'north'],
  ])('%d° on a page with north at %d° is %s', (direction, north, point) => {
    expect(compassPoint(direction, { north })).toBe(point);
    expect(compassPoint(direction, { north, northAnswered: true })).toBe(point);
  });

  it('is that of plan north while nobody said where true north is', () => {
    expect(compassPoint(0, { north: 0, northAnswered: false })).toBe('plan east');
  });
});

describe('describeWay', () => {
  const plan = emptyPlan();
  const spot = { at: [3000, 1000] as const, room, distance: 22 * 25.4, direction: 270 };

  it('says how far and toward what', () => {
    expect(describeWay(spot, [3000, 2000], 'r1', plan, model)).toBe('1 ft 10 in toward the north wall');
  });

  it('names the room when it is another one', () => {
    expect(describeWay(spot, [3000, 2000], 'r7', plan, model)).toBe('1 ft 10 in, into the den');
  });

  it('rounds the way up, so that a move by hand does not end short', () => {
    const long = { ...spot, distance: 22 * 25.4 + 0.2 };
    expect(describeWay(long, [3000, 2000], 'r1', plan, model)).toBe('1 ft 10 1/8 in toward the north wall');
  });
});
