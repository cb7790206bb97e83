import { describe, expect, it } from 'vitest';
import { roomDimensions } from '../../geometry/dimension/room-dimensions.ts';
import { buildLevel } from '../../geometry/level/build-level.ts';
import type { PlanObject } from '../../geometry/plan/model.ts';
import { angleAlongFace } from '../../geometry/snap/align-to-face.ts';
import { baseHeightAfterMove, baseHeightAt } from '../../geometry/snap/base-height.ts';
import { boxWalls, levelOf, wall } from '../helpers/level-of.ts';

const solid = (id: string, x: number, top: number): PlanObject => ({
  id,
  name: id,
  shape: { box: { center: [x, 0], width: 1000, depth: 600, turn: 0 } },
  bottom: 0,
  top,
});

describe('what a detector is set upon', () => {
  const level = levelOf({
    objects: [solid('desk', 0, 762), solid('stand', 0, 900), solid('stool', 2000, 450), solid('shelf', 4000, 2000)],
  });

  it.each([
    { name: 'the highest of two', x: 100, height: 900 },
    { name: 'a stool', x: 2000, height: 450 },
    { name: 'not a shelf above the height band', x: 4000, height: 762 },
    { name: 'the usual height on open floor', x: 8000, height: 762 },
  ])('is $name', ({ x, height }) => {
    expect(baseHeightAt(level, [x, 0], 762)).toBe(height);
  });

  it('lifts it from one thing to another, and leaves a height set by hand alone', () => {
    expect(baseHeightAfterMove(level, [8000, 0], [0, 0], 762, 762)).toBe(900);
    expect(baseHeightAfterMove(level, [0, 0], [2000, 0], 900, 762)).toBe(450);
    expect(baseHeightAfterMove(level, [2000, 0], [8000, 0], 450, 762)).toBe(762);
    expect(baseHeightAfterMove(level, [8000, 0], [9000, 0], 1200, 762)).toBe(1200);
    expect(baseHeightAfterMove(level, [2000, 0], [8000, 0], 1200, 762)).toBe(1200);
  });
});

describe('angleAlongFace', () => {
  it.each([
    {
      name: 'a level wall',
      face: [
        [0, 0],
        [1000, 0],
      ],
      deep: false,
      turn: 0,
    },
    {
      name: 'a level wall walked the other way',
      face: [
        [1000, 0],
        [0, 0],
      ],
      deep: false,
      turn: 0,
    },
    {
      name: 'an upright wall',
      face: [
        [0, -500],
        [0, 500],
      ],
      deep: false,
      turn: 90,
    },
    {
      name: 'a level wall, for a thing that is deeper than wide',
      face: [
        [0, 0],
        [1000, 0],
      ],
      deep: true,
      turn: 90,
    },
    {
      name: 'a slanting wall',
      face: [
        [-100, -100],
        [100, 100],
      ],
      deep: false,
      turn: 45,
    },
  ] as const)('along $name is $turn degrees', ({ face, deep, turn }) => {
    expect(angleAlongFace([face], [0, 10], 50, deep)).toBeCloseTo(turn, 9);
  });

  it('is nothing away from walls', () => {
    expect(
      angleAlongFace(
        [
          [
            [0, -500],
            [0, 500],
          ],
        ],
        [60, 0],
        50,
        false,
      ),
    ).toBe(0);
  });
});

describe('roomDimensions', () => {
  it('has one length each way for a rectangle, measured inside, on exterior walls', () => {
    const found = roomDimensions(buildLevel(levelOf({ walls: boxWalls(0, 0, 6000, 4000, 200) })));
    expect(found.map(({ length }) => Math.round(length)).sort((a, b) => a - b)).toEqual([3800, 5800]);
    expect(found.every(({ wallBehind }) => wallBehind === 200)).toBe(true);
  });

  it('points out of the room', () => {
    for (const { from, to, outward } of roomDimensions(
      buildLevel(levelOf({ walls: boxWalls(0, 0, 6000, 4000, 200) })),
    )) {
      const out = [(from[0] + to[0]) / 2 + outward[0] * 150, (from[1] + to[1]) / 2 + outward[1] * 150] as const;
      expect(out[0] < 100 || out[0] > 5900 || out[1] < 100 || out[1] > 3900).toBe(true);
    }
  });

  it('measures a wall that a partition meets once on each side', () => {
    const walls = [...boxWalls(0, 0, 6000, 4000, 200), wall('w5', [2000, 0], [2000, 4000], 100)];
    const lengths = roomDimensions(buildLevel(levelOf({ walls }))).map(({ length }) => Math.round(length));
    expect(lengths.sort((a, b) => a - b)).toEqual([1850, 3800, 3800, 3850]);
  });
});
