import { expect } from 'vitest';
import { roomFaces } from '../../../geometry/dimension/room-dimensions.ts';
import type { TapedBy } from '../../../geometry/dimension/taped-by.ts';
import { wallLengths } from '../../../geometry/dimension/wall-lengths.ts';
import { wallsThick } from '../../../geometry/edit/thickness-edit.ts';
import { wallsAroundOutline } from '../../../geometry/edit/wall-run.ts';
import { buildLevel } from '../../../geometry/level/build-level.ts';
import type { Level, Mm, Wall, XY } from '../../../geometry/plan/model.ts';
import { wall } from '../../helpers/level-of.ts';

export const FOOT = 304.8;
export const INCH = 25.4;
/** Thickness of the walls, mm: 8 in. */
export const EIGHT = 8 * INCH;
/** Taped dimensions of the basement, mm: 20 ft by 12 ft. */
export const [LONG, SHORT] = [20 * FOOT, 12 * FOOT];

/** Returns walls w1, w2, … around an outline that was taped in this way, 8 in thick. */
export function around(points: readonly XY[], by: TapedBy = 'inside'): readonly Wall[] {
  return wallsAroundOutline(points, EIGHT, by).map(([from, to], i) => wall(`w${i + 1}`, from, to, EIGHT));
}

export const basement = (by: TapedBy = 'inside') =>
  around(
    [
      [0, 0],
      [LONG, 0],
      [LONG, SHORT],
      [0, SHORT],
    ],
    by,
  );

export const ELL: readonly XY[] = [
  [0, 0],
  [LONG, 0],
  [LONG, SHORT],
  [10 * FOOT, SHORT],
  [10 * FOOT, 2 * SHORT],
  [0, 2 * SHORT],
];

/** Returns the level with these walls `mm` thick, and what stays of each. */
export const thick = (level: Level, ids: readonly string[], mm: Mm, by: TapedBy = 'inside') =>
  wallsThick(buildLevel(level), ids, mm, by, 'feet-inches');

export const idsOf = ({ walls }: Level) => walls.map(({ id }) => id);

/** Returns the lengths of all faces of all rooms, mm, as drawn and taped inside. */
export function insideLengths(level: Level): readonly Mm[] {
  const model = buildLevel(level);
  return model.rooms.flatMap((room) => roomFaces(model, room).map(({ length }) => length)).sort((a, b) => a - b);
}

/** Returns the outside lengths of the walls w1, w2, …, mm, in that order. */
export const outsideLengths = (level: Level): readonly Mm[] => {
  const model = buildLevel(level);
  return level.walls.filter(({ id }) => id.startsWith('w')).map((each) => wallLengths(model, each).outside);
};

/** Expects the same lengths, within a hundredth of a mm. */
export function expectAlike(after: readonly Mm[], before: readonly Mm[]) {
  expect(after).toHaveLength(before.length);
  after.forEach((mm, i) => {
    expect(Math.abs(mm - (before[i] as Mm))).toBeLessThan(0.01);
  });
}
