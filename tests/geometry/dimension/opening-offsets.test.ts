import { describe, expect, it } from 'vitest';
import { tapedOffsets } from '../../../geometry/dimension/opening-offsets.ts';
import { wallsAroundOutline } from '../../../geometry/edit/wall-run.ts';
import { buildLevel } from '../../../geometry/level/build-level.ts';
import type { Wall, XY } from '../../../geometry/plan/model.ts';
import { boxWalls, levelOf, wall } from '../../helpers/level-of.ts';

describe('tapedOffsets: left and right as one stands in the room and faces the wall', () => {
  const walls = boxWalls(0, 0, 5000, 3000);
  const model = buildLevel(levelOf({ walls }));
  // 1000 from the corner of the center-lines is 950 from the face of a 100 mm wall; 5000 − 1000 − 800 = 3200, minus 50 is 3150.
  it.each([
    {
      name: 'the top wall, drawn to the right: its beginning is on the left hand',
      of: walls[0],
      left: 950,
      right: 3150,
      way: 1,
    },
    { name: 'the bottom wall, drawn to the left: the same', of: walls[2], left: 950, right: 3150, way: 1 },
    {
      name: 'the top wall drawn the other way',
      of: { ...(walls[0] as Wall), from: [5000, 0], to: [0, 0] } as Wall,
      left: 3150,
      right: 950,
      way: -1,
    },
  ])('$name', ({ of, left, right, way }) => {
    const [found, ...more] = tapedOffsets(model, of as Wall, { offset: 1000, width: 800 });
    expect(found).toMatchObject({ way });
    expect(found?.left).toBeCloseTo(left, 6);
    expect(found?.right).toBeCloseTo(right, 6);
    expect(more).toEqual([]);
  });

  it('a wall between two rooms is taped from each, left being right on the other side', () => {
    const between = wall('p', [2000, 0], [2000, 3000]);
    const both = tapedOffsets(buildLevel(levelOf({ walls: [...walls, between] })), between, {
      offset: 500,
      width: 800,
    });
    expect(both.map(({ left, right }) => [Math.round(left), Math.round(right)]).sort()).toEqual([
      [1650, 450],
      [450, 1650],
    ]);
  });

  // Common practice, no published source: a tape is hooked at the corner of the room, wherever the body of the next wall begins.
  it('where the room goes on round a corner, is taped from that corner of the face', () => {
    const corners: readonly XY[] = [
      [0, 0],
      [6000, 0],
      [6000, 3000],
      [3000, 3000],
      [3000, 6000],
      [0, 6000],
    ];
    const walls = wallsAroundOutline(corners, 200).map((line, i) => wall(`w${i}`, ...line, 200));
    const model = buildLevel(levelOf({ walls }));
    // Both start at the center-lines: half a wall, 100 mm, before the corner at (6000, 3000) and 100 mm behind the one at (3000, 3000).
    const along = [2, 3].map((i) => tapedOffsets(model, walls[i] as Wall, { offset: 1000, width: 800 })[0]);
    expect(along.map((taped) => [taped?.left, taped?.right])).toEqual([
      [900, 3000 - 900 - 800],
      [1100, 3000 - 1100 - 800],
    ]);
  });

  it('none beside a wall that stands free outdoors', () => {
    const alone = wall('a', [0, 0], [3000, 0]);
    expect(tapedOffsets(buildLevel(levelOf({ walls: [alone] })), alone, { offset: 500, width: 800 })).toEqual([]);
  });
});
