import { describe, expect, it } from 'vitest';
import { buttPosition, cornerAngle, pointToward, rectangleWalls } from '../../../geometry/edit/draw-walls.ts';
import { buildLevel } from '../../../geometry/level/build-level.ts';
import type { Wall, XY } from '../../../geometry/plan/model.ts';
import { distance } from '../../../geometry/plane/point.ts';
import type { Line } from '../../../geometry/plane/types.ts';
import { boxWalls, levelOf, wall } from '../../helpers/level-of.ts';

const built = (lines: readonly Line[], thickness: number): readonly Wall[] =>
  lines.map(([from, to], index) => wall(`n${index}`, from, to, thickness));
const floorOf = (walls: readonly Wall[]) => buildLevel(levelOf({ walls })).rooms.map(({ floorArea }) => floorArea);

describe('rectangleWalls', () => {
  it('stand about the inside corners, drawn from any of them', () => {
    for (const [a, b] of [
      [
        [0, 0],
        [4000, 3000],
      ],
      [
        [4000, 3000],
        [0, 0],
      ],
      [
        [4000, 0],
        [0, 3000],
      ],
    ] as const) {
      expect(floorOf(built(rectangleWalls(levelOf({}), a, b, 100), 100))).toEqual([expect.closeTo(12e6, 0)]);
    }
  });

  it('share the wall of the room beside', () => {
    const walls = boxWalls(-50, -50, 4050, 3050); // inside 4000 by 3000
    const level = levelOf({ walls });
    // Beginning at the outer face of the right wall, which is 100 thick: that face is at 4100.
    const added = rectangleWalls(level, [4100, 0], [6000, 3000], 100);
    expect(added).toHaveLength(3);
    expect(floorOf([...walls, ...built(added, 100)]).sort((a, b) => a - b)).toEqual([
      expect.closeTo(1900 * 3000, 0),
      expect.closeTo(4000 * 3000, 0),
    ]);
  });
});

describe('angles and lengths of a run', () => {
  it.each([
    { at: [1000, 1000] as XY, degrees: 90 },
    { at: [2000, 0] as XY, degrees: 180 },
    { at: [0, 0] as XY, degrees: 0 },
    { at: [2000, 1000] as XY, degrees: 135 },
  ])('from the left through (1000, 0) to $at is $degrees degrees', ({ at, degrees }) => {
    expect(cornerAngle([0, 0], [1000, 0], at)).toBeCloseTo(degrees, 9);
  });

  it('sets a typed length in the shown direction', () => {
    expect(pointToward([100, 100], [100, 50], 30)).toEqual([100, 70]);
    expect(pointToward([100, 100], [400, 500], 1000)).toEqual([700, 900]); // 3-4-5
    expect(pointToward([1, 2], [1, 2], 10)).toEqual([1, 2]);
  });
});

describe('buttPosition: a wall that begins on a standing one', () => {
  // 8 in walls around a room of 30 ft by 20 ft: the center-lines are 4 in outside the faces.
  const walls = boxWalls(-101.6, -101.6, 9245.6, 6197.6, 203.2);
  const level = levelOf({ walls });
  const model = buildLevel(level);
  const inside: XY = [4000, 3000];

  it('stands so that a tape from the corner to its face reads whole steps', () => {
    // At the pressed point the face of a 4 1/2 in wall would be 121.05 in from the corner: 10 ft 1 in is the nearest inch.
    const butt = buttPosition(level, model, [3131.8, -101.6], inside, 114.3, 25.4);
    const [toLeft, toRight] = butt?.taped ?? [];
    expect(toLeft && distance(...toLeft)).toBeCloseTo(121 * 25.4, 6);
    expect(toRight && distance(...toRight)).toBeCloseTo(9144 - 121 * 25.4 - 114.3, 6);
    expect(butt?.at).toEqual([3130.55, -101.6]);
  });

  it('stands where it was pressed while no step is asked for', () => {
    const butt = buttPosition(level, model, [3131.8, -101.6], inside, 114.3, null);
    expect(butt?.at[0]).toBeCloseTo(3131.8, 3);
  });

  it('is null where no wall stands, and on a wall shorter than it is thick', () => {
    expect(buttPosition(level, model, [4000, 3000], inside, 114.3, 25.4)).toBeNull();
    const stub = levelOf({ walls: [wall('s', [0, 0], [50, 0])] });
    expect(buttPosition(stub, buildLevel(stub), [25, 0], [25, 500], 114.3, 25.4)).toBeNull();
  });

  it('never leaves the wall', () => {
    for (const x of [-101.6, 9245.6]) {
      const at = buttPosition(level, model, [x, -101.6], inside, 114.3, 25.4)?.at[0] ?? Number.NaN;
      expect(Math.abs(at - x)).toBeLessThanOrEqual(114.3);
    }
  });
});
