import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { buildLevel, emptyLevel } from '../../geometry/index.ts';
import type { Level, Opening, Wall, XY } from '../../geometry/plan/model.ts';
import {
  dimensionsAbout,
  faceDimensions,
  type RunningDimension,
  withDimension,
} from '../../geometry/running-dimensions.ts';

const wall = (id: string, from: XY, to: XY, thickness = 200): Wall => ({ id, from, to, thickness, side: 'auto' });
const opening = (id: string, on: string, offset: number, width: number): Opening => ({
  id,
  wall: on,
  kind: 'window',
  offset,
  width,
  bottom: 900,
  top: 2000,
});

/** Two rooms of one house, 9 m by 4 m from middle to middle, parted at 5 m; two windows in the upper wall. */
const HOUSE: Level = {
  ...emptyLevel('L1'),
  walls: [
    wall('up', [0, 0], [9000, 0]),
    wall('right', [9000, 0], [9000, 4000]),
    wall('down', [9000, 4000], [0, 4000]),
    wall('left', [0, 4000], [0, 0]),
    wall('between', [5000, 0], [5000, 4000], 100),
  ],
  openings: [opening('o1', 'up', 1000, 900), opening('o2', 'up', 3000, 600)],
  objects: [
    {
      id: 't1',
      name: 'Desk',
      shape: { box: { center: [2000, 2000], width: 1000, depth: 500, turn: 0 } },
      bottom: 0,
      top: 700,
    },
  ],
};
const model = buildLevel(HOUSE);

const find = (list: readonly RunningDimension[], key: string): RunningDimension => {
  const found = list.find((each) => each.key.startsWith(key));
  if (!found) throw new Error(`no ${key} among ${list.map((each) => each.key).join(', ')}`);
  return found;
};
const lengths = (level: Level) =>
  faceDimensions(buildLevel(level))
    .map(({ length }) => Math.round(length))
    .sort((a, b) => a - b);

describe('faceDimensions(model)', () => {
  it('are the free lengths of the rooms, face to face', () => {
    // 5000 - 100 - 50, 4000 - 50 - 100, and 4000 - 2 * 100 for each room.
    expect(lengths(HOUSE)).toEqual([3800, 3800, 3850, 4850]);
  });
});

describe('withDimension(model, face, length, end)', () => {
  const across = faceDimensions(model).filter(({ length }) => length > 3820);

  it('moves the wall that stands at the end, and the room beyond takes the difference', () => {
    const wide = across.find(({ length }) => Math.round(length) === 4850) as RunningDimension;
    const end = wide.line[1][0] > wide.line[0][0] ? 'to' : 'from';
    const moved = withDimension(model, wide, 5000, end);
    expect(lengths(moved)).toEqual([3700, 3800, 3800, 5000]);
    expect(moved.walls.find(({ id }) => id === 'between')?.from).toEqual([5150, 0]);
    // The outside walls and the windows in them stay.
    expect(moved.walls.filter(({ id }) => id !== 'between')).toEqual(HOUSE.walls.filter(({ id }) => id !== 'between'));
    expect(moved.openings).toEqual(HOUSE.openings);
  });

  it('or the wall at the other end; openings keep their place on the page', () => {
    const wide = across.find(({ length }) => Math.round(length) === 4850) as RunningDimension;
    const end = wide.line[1][0] > wide.line[0][0] ? 'from' : 'to';
    const moved = withDimension(model, wide, 5000, end);
    expect(lengths(moved)).toEqual([3800, 3800, 3850, 5000]);
    expect(moved.walls.find(({ id }) => id === 'up')?.from).toEqual([-150, 0]);
    expect(moved.openings.map(({ offset }) => offset)).toEqual([1150, 3150]);
  });

  it('gives the wanted length, whatever it is, at either end', () => {
    fc.assert(
      fc.property(
        fc.nat(3),
        fc.integer({ min: 3000, max: 6000 }),
        fc.constantFrom('from', 'to'),
        (which, length, end) => {
          const faces = faceDimensions(model);
          const face = faces[which] as RunningDimension;
          const after = buildLevel(withDimension(model, face, length, end));
          const now = faceDimensions(after).map((each) => Math.abs(each.length - length));
          // Rooms of two widths: the other room may lose what this one wins, and lose its figure only when it is gone.
          expect(Math.min(...now)).toBeLessThan(0.01);
        },
      ),
    );
  });
});

describe('dimensionsAbout(model, id)', () => {
  it('a window: the string of its wall from corner to corner, each length in its turn', () => {
    const string = dimensionsAbout(model, 'o1');
    expect(string.map(({ key, length }) => [key, length])).toEqual([
      ['before o1', 900], // from the face of the left wall
      ['width o1', 900],
      ['before o2', 1100],
      ['width o2', 600],
      ['after o2', 1350], // to the face of the wall between
    ]);
    expect(dimensionsAbout(model, 'up')).toEqual(string);
  });

  it('each of them, typed, is what it then measures, and no other opening moves', () => {
    fc.assert(
      fc.property(
        fc.constantFrom('before o1', 'width o1', 'before o2', 'width o2', 'after o2'),
        fc.integer({ min: 400, max: 1400 }),
        (key, length) => {
          const moved = withDimension(model, find(dimensionsAbout(model, 'o1'), key), length);
          expect(find(dimensionsAbout(buildLevel(moved), 'o1'), key).length).toBeCloseTo(length, 6);
          const other = key.endsWith('o1') ? 'o2' : 'o1';
          expect(moved.openings.find(({ id }) => id === other)).toEqual(HOUSE.openings.find(({ id }) => id === other));
        },
      ),
    );
  });

  it('a desk: to the wall on each side of the page; typed, it stands there', () => {
    const gaps = dimensionsAbout(model, 't1');
    expect(gaps.map(({ key, length }) => [key, length])).toEqual([
      ['gap t1 left', 1400],
      ['gap t1 right', 2450],
      ['gap t1 up', 1650],
      ['gap t1 down', 1650],
    ]);
    const moved = withDimension(model, find(gaps, 'gap t1 right'), 300);
    const [desk] = moved.objects;
    expect(desk && 'box' in desk.shape && desk.shape.box.center).toEqual([4150, 2000]);
  });

  it('nothing for what has no place of its own', () => {
    expect(dimensionsAbout(model, 'left')).toEqual([]);
    expect(dimensionsAbout(model, 'nothing')).toEqual([]);
  });
});
