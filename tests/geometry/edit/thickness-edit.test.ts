import { describe, expect, it } from 'vitest';
import type { TapedBy } from '../../../geometry/dimension/taped-by.ts';
import { buildLevel } from '../../../geometry/level/build-level.ts';
import { describeThicknessChanges } from '../../../geometry/messages/thickness-changed.ts';
import type { Level, Mm, Opening, PlanObject, Wall, XY } from '../../../geometry/plan/model.ts';
import { roundCoordinate } from '../../../geometry/plane/point.ts';
import { levelOf, wall } from '../../helpers/level-of.ts';
import {
  around,
  basement,
  EIGHT,
  ELL,
  expectAlike,
  FOOT,
  INCH,
  idsOf,
  insideLengths,
  LONG,
  outsideLengths,
  SHORT,
  thick,
} from './taped-walls.ts';

// Expected values are geometry alone: common practice, a tape measures faces. No published source.

/** Returns a partition from the face of the top wall to that of the bottom one, 4 1/2 in thick, its ends on both center-lines. */
const partition = (id = 'p'): Wall => wall(id, [8 * FOOT, -EIGHT / 2], [8 * FOOT, SHORT + EIGHT / 2], 4.5 * INCH);

const exterior = (level: Level) => idsOf(level).filter((id) => id.startsWith('w'));
const lineOf = (level: Level, id: string) => {
  const found = level.walls.find((each) => each.id === id);
  return found && [found.from, found.to];
};
const said = (level: Level, ids: readonly string[], mm: Mm, by: TapedBy = 'inside') =>
  describeThicknessChanges(thick(level, ids, mm, by).changes, 'feet-inches');

describe('wallsThick: a basement taped inside as 20 ft by 12 ft', () => {
  const level = levelOf({ walls: basement() });
  const divided = levelOf({ walls: [...basement(), partition()] });
  for (const inches of [12, 6]) {
    for (const id of ['w1', 'w2', 'w3', 'w4']) {
      it(`stays so when ${id} is ${inches} in thick`, () => {
        const after = thick(level, [id], inches * INCH).level;
        expectAlike(insideLengths(after), [SHORT, SHORT, LONG, LONG]);
        expect(after.walls.find((each) => each.id === id)?.thickness).toBe(inches * INCH);
      });
    }
    it(`stays so when all walls are ${inches} in thick, at once or one after another`, () => {
      const once = thick(level, idsOf(level), inches * INCH).level;
      const [first, ...rest] = idsOf(level);
      const half = thick(level, [first as string], inches * INCH).level;
      const bit = rest.reduce((now, id) => thick(now, [id], inches * INCH).level, half);
      expectAlike(insideLengths(once), [SHORT, SHORT, LONG, LONG]);
      expect(bit.walls).toEqual(once.walls);
    });
    it(`with a partition, both rooms stay as they were at ${inches} in, and the partition stays joined`, () => {
      const after = thick(divided, exterior(divided), inches * INCH).level;
      expectAlike(insideLengths(after), insideLengths(divided));
      const half = (inches * INCH) / 2;
      expect(lineOf(after, 'p')).toEqual([
        [8 * FOOT, roundCoordinate(-half)],
        [8 * FOOT, roundCoordinate(SHORT + half)],
      ]);
      expect(buildLevel(after).notices.map(({ kind }) => kind)).toEqual(
        buildLevel(divided).notices.map(({ kind }) => kind),
      );
    });
    it(`an L with a partition in line with a wall at the inner corner stays as it was at ${inches} in`, () => {
      const inner: XY = [10 * FOOT + EIGHT / 2, SHORT + EIGHT / 2];
      for (const to of [
        [inner[0], -EIGHT / 2],
        [-EIGHT / 2, inner[1]],
      ] as const) {
        const ell = levelOf({ walls: [...around(ELL), wall('p', inner, to, 4.5 * INCH)] });
        expect(buildLevel(ell).rooms).toHaveLength(2);
        expectAlike(insideLengths(thick(ell, exterior(ell), inches * INCH).level), insideLengths(ell));
      }
    });
  }

  it('taped outside, the outside faces stay', () => {
    const out = levelOf({ walls: basement('outside') });
    const after = thick(out, ['w1', 'w2'], 12 * INCH, 'outside').level;
    expectAlike(outsideLengths(after), [LONG, SHORT, LONG, SHORT]);
    expectAlike(outsideLengths(thick(out, idsOf(out), 6 * INCH, 'outside').level), [LONG, SHORT, LONG, SHORT]);
  });
  it('taped outside, a wall that comes to stand where the middle of the room was goes along', () => {
    const out = levelOf({ walls: around(ELL, 'outside') });
    const before = outsideLengths(out);
    const uneven = thick(out, ['w1', 'w2', 'w3', 'w6'], 298, 'outside').level;
    const thin = thick(uneven, ['w3', 'w4', 'w5'], 60, 'outside').level;
    const after = thick(thin, ['w3', 'w4', 'w5'], 494, 'outside');
    expect(after.changes.map(({ stays }) => stays)).toEqual(['outside', 'outside', 'outside']);
    expectAlike(outsideLengths(after.level), before);
  });
  it('taped between center lines, these stay', () => {
    const after = thick(level, idsOf(level), 12 * INCH, 'center').level;
    expect(idsOf(after).map((id) => lineOf(after, id))).toEqual(idsOf(level).map((id) => lineOf(level, id)));
  });
  it('the mark that nobody has measured is gone of these walls alone', () => {
    const assumed = levelOf({ walls: basement().map((each): Wall => ({ ...each, thicknessAnswered: false })) });
    for (const mm of [12 * INCH, EIGHT]) {
      const marks = thick(assumed, ['w1'], mm).level.walls.map((each) => each.thicknessAnswered);
      expect(marks).toEqual([undefined, false, false, false]);
    }
  });
});

describe('wallsThick: what else is there', () => {
  const window: Opening = {
    id: 'o1',
    wall: 'w1',
    kind: 'window',
    offset: EIGHT / 2 + 1000,
    width: 800,
    bottom: 900,
    top: 1500,
  };
  const desk: PlanObject = {
    id: 't1',
    name: 'Desk',
    shape: { box: { center: [600, 300], width: 1200, depth: 600, turn: 0 } },
    bottom: 0,
    top: 762,
  };
  const level = levelOf({ walls: basement(), openings: [window], objects: [desk] });

  it.each([12, 6])(
    'an opening keeps its offset from the inside corner, and a desk stays at the face: %s in',
    (inches) => {
      const after = thick(level, idsOf(level), inches * INCH).level;
      // The inside corner is at 0; the wall begins half of its thickness to the left of the corner.
      expect(after.openings[0]?.offset).toBeCloseTo((inches * INCH) / 2 + 1000, 3);
      expect(after.objects).toBe(level.objects);
    },
  );
  it('walls that are not concerned keep their identity', () => {
    const after = thick(level, ['w2'], 12 * INCH).level;
    expect(after.walls[3]).toBe(level.walls[3]);
    expect(after.openings).toBe(level.openings);
  });
});

describe('wallsThick: a wall whose taped face nobody can know keeps its center line, and says so', () => {
  const divided = levelOf({ walls: [...basement(), partition()] });
  it('a partition between two rooms', () => {
    const after = thick(divided, ['p'], 6.5 * INCH).level;
    expect(lineOf(after, 'p')).toEqual(lineOf(divided, 'p'));
    expect(said(divided, ['p'], 6.5 * INCH)).toBe(
      'The wall keeps its center line: a room lies on both sides, and nobody can know which face was taped. Each face moves by 1 in.',
    );
  });
  it('a wall with rooms on both sides of a part of it, and one outdoors beside another part', () => {
    // A smaller room is adjacent to the right wall.
    const beside = levelOf({
      walls: [
        ...basement(),
        ...[
          wall('a', [LONG + EIGHT / 2, 0], [LONG + 2000, 0], EIGHT),
          wall('b', [LONG + 2000, 0], [LONG + 2000, 2000], EIGHT),
          wall('c', [LONG + 2000, 2000], [LONG + EIGHT / 2, 2000], EIGHT),
        ],
      ],
    });
    expect(lineOf(thick(beside, ['w2'], 12 * INCH).level, 'w2')).toEqual(lineOf(beside, 'w2'));
    expect(said(beside, ['w2'], 12 * INCH)).toMatch(/a room lies on both sides/);
  });
  it('a wall that stands free, and one that ends outdoors', () => {
    const free = levelOf({
      walls: [...basement(), wall('f', [1000, 1000], [2000, 1000], EIGHT), wall('y', [-5000, 0], [-4000, 0], EIGHT)],
    });
    for (const id of ['f', 'y']) {
      expect(lineOf(thick(free, [id], 12 * INCH).level, id)).toEqual(lineOf(free, id));
      expect(said(free, [id], 12 * INCH)).toMatch(/^The wall keeps its center line: .* Each face moves by 2 in\.$/);
    }
  });
  it('the wall before a cavity keeps its face toward the room', () => {
    // Studs a foot inside the right wall; the space behind them is not labeled.
    const studs = levelOf({
      walls: [...basement(), wall('s', [LONG - 300, -EIGHT / 2], [LONG - 300, SHORT + EIGHT / 2], 100)],
    });
    const after = thick(studs, ['s'], 150);
    expect(after.changes.map(({ stays }) => stays)).toEqual(['inside']);
    expect(lineOf(after.level, 's')?.[0]?.[0]).toBeCloseTo(LONG - 275, 3);
  });
  it('one of two walls in line: the other one would be left behind', () => {
    const [top, ...rest] = basement();
    const { from, to } = top as Wall;
    const middle: XY = [3000, from[1]];
    const split = levelOf({ walls: [wall('w1', from, middle, EIGHT), wall('w5', middle, to, EIGHT), ...rest] });
    expect(said(split, ['w1'], 12 * INCH)).toBe(
      'The wall keeps its center line: the walls that are joined to it, or what is in them, could not go along. Each face moves by 2 in.',
    );
    const both = thick(split, ['w1', 'w5'], 12 * INCH);
    expectAlike(insideLengths(both.level), [SHORT, SHORT, LONG, LONG]);
    expect(describeThicknessChanges(both.changes, 'feet-inches')).toBe(
      'The inside faces stay where they were taped. The outside faces move out by 4 in.',
    );
  });
  it('where one wall cannot, the others do', () => {
    // A window that ends at the end of the center-line of the top wall.
    const [top] = basement();
    const long = (top as Wall).to[0] - (top as Wall).from[0];
    const openings: readonly Opening[] = [
      { id: 'o1', wall: 'w1', kind: 'window', offset: long - 800, width: 800, bottom: 900, top: 1500 },
    ];
    const level = levelOf({ walls: basement(), openings });
    const { level: after, changes } = thick(level, idsOf(level), 6 * INCH);
    expect(changes.map(({ stays }) => stays)).toEqual(['inside', 'joined', 'inside', 'inside']);
    expect(insideLengths(after).filter((mm) => Math.abs(mm - SHORT) < 0.01)).toHaveLength(2);
  });
});

describe('describeThicknessChanges', () => {
  const level = levelOf({ walls: [...basement(), partition()] });
  const out = levelOf({ walls: basement('outside') });
  it.each([
    [level, 'inside', ['w1'], 12, 'The inside face stays where it was taped. The outside face moves out by 4 in.'],
    [
      level,
      'inside',
      ['w1', 'w2'],
      6,
      'The inside faces stay where they were taped. The outside faces move in by 2 in.',
    ],
    [out, 'outside', ['w1'], 12, 'The outside face stays where it was taped. The inside face moves in by 4 in.'],
    [out, 'outside', ['w1'], 6, 'The outside face stays where it was taped. The inside face moves out by 2 in.'],
    [level, 'center', ['w1'], 12, 'The wall keeps its center line, from which it was taped. Each face moves by 2 in.'],
    [level, 'inside', ['w1'], 8, ''],
    [
      level,
      'inside',
      ['w1', 'w2', 'w3', 'w4', 'p'],
      12,
      'The inside faces stay where they were taped. The outside faces move out by 4 in. 1 wall keeps its center line: a room lies on both sides, and nobody can know which face was taped. Each face moves by 3 3/4 in.',
    ],
  ] as const)('%#', (from, by, ids, inches, words) => {
    expect(said(from, ids, inches * INCH, by)).toBe(words);
  });
});
