import { describe, expect, it } from 'vitest';
import {
  duplicatedItems,
  itemPatched,
  movedItems,
  resizedItem,
  turnedItem,
  withItem,
  withWallEnds,
} from '../../../geometry/edit/index.ts';
import type { XY } from '../../../geometry/plan/model.ts';
import { desk, done, fan, level, levelOf, openingOf, plan, reasonOf, wallOf, window } from './room-plan.ts';

describe('movedItems(plan, levelId, ids, dx, dy)', () => {
  it('moves whole things, and nothing else', () => {
    const edited = done(movedItems(plan, 'L1', ['t1', 'd1', 'r1'], 10, -20));
    expect(levelOf(edited).objects[0]?.shape).toEqual({
      box: { center: [1010, 980], width: 1200, depth: 600, turn: 0 },
    });
    expect(levelOf(edited).detectors[0]?.at).toEqual([2010, 1480]);
    expect(levelOf(edited).rooms[0]?.at).toEqual([510, 480]);
    expect(levelOf(edited).walls).toBe(level.walls);
    expect(levelOf(edited).fixtures).toBe(level.fixtures);
    expect(levelOf(edited).openings).toBe(level.openings);
  });

  it('keeps a room closed: ends that meet a moved wall come along, and so does a partition that butts against it', () => {
    const edited = done(movedItems(plan, 'L1', ['w1'], 0, -500));
    expect(wallOf(edited, 'w1')).toMatchObject({ from: [0, -500], to: [4000, -500] });
    expect(wallOf(edited, 'w2')).toMatchObject({ from: [4000, -500], to: [4000, 3000] });
    expect(wallOf(edited, 'w4')).toMatchObject({ from: [0, 3000], to: [0, -500] });
    expect(wallOf(edited, 'w5')).toMatchObject({ from: [2000, -500], to: [2000, 3000] });
    expect(wallOf(edited, 'w3')).toBe(level.walls[2]);
  });

  it('leaves openings where they are: at their place on the wall that moves, at their place on the page in one that is stretched', () => {
    const edited = done(movedItems(plan, 'L1', ['w3'], 0, 500)); // the start of w4 moves down by 500
    expect(openingOf(edited, 'o1')?.offset).toBe(1000);
    expect(openingOf(edited, 'o2')?.offset).toBe(1500);
  });

  it('slides an opening along its wall, as far as the wall goes', () => {
    expect(openingOf(done(movedItems(plan, 'L1', ['o1'], 300, 999)), 'o1')?.offset).toBe(1300);
    expect(openingOf(done(movedItems(plan, 'L1', ['o1'], 1e6, 0)), 'o1')?.offset).toBe(4000 - 914.4);
    expect(openingOf(done(movedItems(plan, 'L1', ['o1'], -1e6, 0)), 'o1')?.offset).toBe(0);
    expect(openingOf(done(movedItems(plan, 'L1', ['o2'], 0, -250)), 'o2')?.offset).toBe(1250); // w4 runs up the page
  });

  it('refuses to make a wall too short for its window', () => {
    expect(reasonOf(movedItems(plan, 'L1', ['w3'], 0, -2500))).toBe(
      'The window is 3 ft wide and its wall is only 1 ft 7 5/8 in long. Shorten it or put it on a longer wall.', // 500 mm are 19.69 in
    );
  });

  it('gives the same plan back for no move', () => {
    expect(done(movedItems(plan, 'L1', ['w1'], 0, 0))).toBe(plan);
    expect(done(movedItems(plan, 'L1', [], 5, 5))).toBe(plan);
  });
});

describe('withWallEnds(plan, levelId, wallId, from, to)', () => {
  it('takes the ends that meet it along, also when one end lands where the other was', () => {
    const edited = done(withWallEnds(plan, 'L1', 'w1', [4000, 0], [8000, 0]));
    expect(wallOf(edited, 'w1')).toMatchObject({ from: [4000, 0], to: [8000, 0] });
    expect(wallOf(edited, 'w4')).toMatchObject({ to: [4000, 0] });
    expect(wallOf(edited, 'w2')).toMatchObject({ from: [8000, 0] });
    expect(wallOf(edited, 'w3')).toBe(level.walls[2]);
  });
});

/** The marks of a copied window: its sill and its head are not measured. */
const OPEN = { bottomAnswered: false, topAnswered: false };

describe('duplicatedItems(plan, levelId, ids, dx, dy)', () => {
  const copied = (ids: readonly string[]) => {
    const result = duplicatedItems(plan, 'L1', ids, 300, 100);
    if (!result.ok) throw new Error(result.reason);
    return result;
  };

  it('puts copies with new ids beside the originals, and leaves those where they are', () => {
    const { plan: edited, ids } = copied(['t1', 'f1', 'r1']);
    expect(ids).toEqual(['t2', 'f2', 'r2']);
    expect(levelOf(edited).objects[0]).toBe(level.objects[0]);
    expect(levelOf(edited).objects[1]).toEqual({
      ...desk,
      id: 't2',
      shape: { box: { center: [1300, 1100], width: 1200, depth: 600, turn: 0 } },
      // The copy is not measured.
      topAnswered: false,
    });
    expect(levelOf(edited).fixtures[1]?.stream).toEqual(fan.stream);
    expect(levelOf(edited).rooms[1]?.at).toEqual([800, 600]);
  });

  it('copies a wall with its openings, and drags no neighbor along', () => {
    const { plan: edited, ids } = copied(['w1']);
    expect(ids).toEqual(['w6']);
    expect(wallOf(edited, 'w6')).toMatchObject({ from: [300, 100], to: [4300, 100] });
    expect(openingOf(edited, 'o3')).toEqual({ ...window, id: 'o3', wall: 'w6', ...OPEN });
    expect(levelOf(edited).walls.slice(0, 5)).toEqual(level.walls);
  });

  it('sets a copy of an opening in the nearest free place of its wall', () => {
    expect(openingOf(copied(['o1']).plan, 'o3')?.offset).toBeCloseTo(1914.4, 9); // adjacent to the one at 1000
    const wide = done(itemPatched(plan, 'L1', 'opening', 'o1', { width: 2000 }));
    const result = duplicatedItems(wide, 'L1', ['o1'], 0, 0);
    expect(result.ok ? 'done' : result.reason).toBe('The window has no free place for a copy on its wall.');
  });

  it('makes a new pair of a pair, and a single detector of half a pair', () => {
    const pair = levelOf(copied(['d2', 'd3']).plan).detectors.slice(3);
    expect(pair.map((one) => [one.id, one.label, one.pair])).toEqual([
      ['d4', 'A4', 'B'],
      ['d5', 'A5', 'B'],
    ]);
    const [single] = levelOf(copied(['d3']).plan).detectors.slice(3);
    expect(single).toMatchObject({ id: 'd4', label: 'A4', pair: null, at: [2300, 1600] });
  });

  it('copies no reading', () => {
    expect(copied(['d1']).plan.readings).toBe(plan.readings);
  });

  it.each([
    ['', ''],
    ['Attic', 'Attic 2'],
    ['B9', 'B10'],
    ['7', '8'],
  ])('labels the copy of %j %j', (label, next) => {
    const marked = done(itemPatched(plan, 'L1', 'detector', 'd1', { label }));
    const result = duplicatedItems(marked, 'L1', ['d1'], 0, 0);
    expect(result.ok && levelOf(result.plan).detectors[3]?.label).toBe(next);
  });

  it('gives the same plan back when nothing is there to copy', () => {
    expect(copied([]).plan).toBe(plan);
  });
});

describe('turnedItem(plan, levelId, id, degrees)', () => {
  it('turns a box, and the stream of a fixture, and keeps angles below 360', () => {
    expect(levelOf(done(turnedItem(plan, 'L1', 't1', -90))).objects[0]?.shape).toMatchObject({ box: { turn: 270 } });
    expect(levelOf(done(turnedItem(plan, 'L1', 'f1', 90))).fixtures[0]).toEqual({
      ...fan,
      stream: { ...fan.stream, direction: 80 },
    });
  });

  it('turns an outline about its middle: four quarter turns bring it back to the last digit', () => {
    const points: readonly XY[] = [
      [0, 0],
      [400, 0],
      [0, 200],
    ];
    let edited = done(withItem(plan, 'L1', 'object', { ...desk, shape: { polygon: { points } } }));
    edited = done(turnedItem(edited, 'L1', 't1', 90));
    expect(levelOf(edited).objects[0]?.shape).toEqual({
      polygon: {
        points: [
          [300, -100],
          [300, 300],
          [100, -100],
        ],
      },
    });
    for (let i = 0; i < 3; i++) edited = done(turnedItem(edited, 'L1', 't1', 90));
    expect(levelOf(edited).objects[0]?.shape).toEqual({ polygon: { points } });
  });

  it('turns a wall about its middle with what meets its ends, its own openings in their place along it', () => {
    const edited = done(turnedItem(plan, 'L1', 'w1', 180));
    expect(wallOf(edited, 'w1')).toMatchObject({ from: [4000, 0], to: [0, 0] });
    expect(wallOf(edited, 'w2')).toMatchObject({ from: [0, 0] });
    expect(openingOf(edited, 'o1')?.offset).toBe(1000);
  });

  it.each([
    ['o1', 'The window turns with its wall. Turn the wall.'],
    ['d1', 'Detector A1 has no direction: there is nothing to turn.'],
    ['r1', 'Den has no direction: there is nothing to turn.'],
  ])('refuses %s', (id, reason) => {
    expect(reasonOf(turnedItem(plan, 'L1', id, 90))).toBe(reason);
  });
});

describe('resizedItem(plan, levelId, id, size)', () => {
  it('keeps the middle', () => {
    expect(levelOf(done(resizedItem(plan, 'L1', 't1', { width: 1500 }))).objects[0]?.shape).toEqual({
      box: { center: [1000, 1000], width: 1500, depth: 600, turn: 0 },
    });
    expect(levelOf(done(resizedItem(plan, 'L1', 'f1', { across: 500 }))).fixtures[0]?.shape).toEqual({
      circle: { center: [500, 500], radius: 250 },
    });
    const points: readonly XY[] = [
      [0, 0],
      [400, 0],
      [0, 200],
    ];
    const outline = done(withItem(plan, 'L1', 'object', { ...desk, shape: { polygon: { points } } }));
    expect(levelOf(done(resizedItem(outline, 'L1', 't1', { width: 800 }))).objects[0]?.shape).toEqual({
      polygon: {
        points: [
          [-200, 0],
          [600, 0],
          [-200, 200],
        ],
      },
    });
  });

  it('refuses a size below zero', () => {
    expect(reasonOf(resizedItem(plan, 'L1', 't1', { width: -1 }))).toBe(
      'Desk: "shape.box.width" is -1, needs a number of mm, 0 to 100000.',
    );
  });
});
