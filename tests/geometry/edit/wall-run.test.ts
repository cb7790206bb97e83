import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { TAPED_BY, type TapedBy } from '../../../geometry/dimension/taped-by.ts';
import { wallLengths } from '../../../geometry/dimension/wall-lengths.ts';
import { builtRun } from '../../../geometry/edit/run-on-walls.ts';
import { halfWallAt, tapedLength, typedWallEnd, wallsAroundOutline } from '../../../geometry/edit/wall-run.ts';
import { buildLevel } from '../../../geometry/level/build-level.ts';
import type { Wall, XY } from '../../../geometry/plan/model.ts';
import { distance } from '../../../geometry/plane/point.ts';
import type { Line } from '../../../geometry/plane/types.ts';
import { boxWalls, levelOf, wall } from '../../helpers/level-of.ts';

const built = (lines: readonly Line[], thickness: number): readonly Wall[] =>
  lines.map(([from, to], index) => wall(`n${index}`, from, to, thickness));
const floorOf = (walls: readonly Wall[]) => buildLevel(levelOf({ walls })).rooms.map(({ floorArea }) => floorArea);
const turned =
  (degrees: number, mirrored: boolean) =>
  ([x, y]: XY): XY => {
    const [cos, sin] = [Math.cos((degrees * Math.PI) / 180), Math.sin((degrees * Math.PI) / 180)];
    const across = mirrored ? -x : x;
    return [across * cos - y * sin + 5000, across * sin + y * cos + 5000];
  };

describe('wallsAroundOutline', () => {
  it('builds outside of what was drawn: the floor is what the tape said', () => {
    // 12 ft by 10 ft inside.
    const outline: readonly XY[] = [
      [0, 0],
      [3657.6, 0],
      [3657.6, 3048],
      [0, 3048],
    ];
    const [area] = floorOf(built(wallsAroundOutline(outline, 203.2), 203.2));
    expect(area).toBeCloseTo(3657.6 * 3048, 0);
  });

  it('whichever way round it was drawn', () => {
    const outline: readonly XY[] = [
      [0, 0],
      [0, 3000],
      [2000, 3000],
      [2000, 1000],
      [4000, 1000],
      [4000, 0],
    ];
    const area = 4000 * 1000 + 2000 * 2000;
    for (const points of [outline, [...outline].reverse()]) {
      expect(floorOf(built(wallsAroundOutline(points, 200), 200))).toEqual([expect.closeTo(area, 0)]);
    }
  });

  it('on slanting sides too', () => {
    const outline: readonly XY[] = [
      [0, 0],
      [4000, 0],
      [2000, 3000],
    ];
    expect(floorOf(built(wallsAroundOutline(outline, 200), 200))).toEqual([expect.closeTo((4000 * 3000) / 2, -1)]);
  });

  it('drops corners that do not turn and points set twice', () => {
    const outline: readonly XY[] = [
      [0, 0],
      [1000, 0],
      [1000, 0],
      [2000, 0],
      [2000, 2000],
      [0, 2000],
    ];
    expect(wallsAroundOutline(outline, 100)).toHaveLength(4);
  });

  it.each([
    { name: 'no points', points: [] },
    {
      name: 'a line there and back',
      points: [
        [0, 0],
        [1000, 0],
        [2000, 0],
      ] as readonly XY[],
    },
  ])('makes no walls of $name', ({ points }) => {
    expect(wallsAroundOutline(points, 100)).toEqual([]);
  });
});

describe('builtRun', () => {
  it('leaves pieces without length out', () => {
    expect(
      builtRun(
        levelOf({ walls: [] }),
        [
          [0, 0],
          [1000, 0],
          [1000, 0.2],
          [1000, 500],
        ],
        100,
        'center',
      ).lines,
    ).toHaveLength(2);
  });
});

describe('what the tape reads', () => {
  const level = levelOf({ walls: boxWalls(0, 0, 6000, 4000, 200) });

  it('leaves half a wall off at each end that meets one', () => {
    expect(
      tapedLength(level, [
        [3000, 0],
        [3000, 4000],
      ]),
    ).toBe(3800);
    expect(
      tapedLength(level, [
        [3000, 0],
        [3000, 2000],
      ]),
    ).toBe(1900);
    expect(
      tapedLength(level, [
        [3000, 1000],
        [3000, 2000],
      ]),
    ).toBe(1000);
  });

  it('takes more off where the wall is met aslant', () => {
    // At 30 degrees to the wall, its face is 100 / sin 30 = 200 along the line.
    expect(halfWallAt(level, [3000, 0], [3000 + 1000 * Math.sqrt(3), 1000])).toBeCloseTo(200, 6);
  });

  it('takes nothing off along a wall', () => {
    expect(
      tapedLength(level, [
        [0, 0],
        [1000, 0],
      ]),
    ).toBeCloseTo(1000, 6);
  });
});

/** Returns the lengths between the corners of a run as they are taped. */
const legsOf = (points: readonly XY[]) => points.slice(1).map((to, i) => distance(points[i] as XY, to));

describe('a run of walls as it was taped', () => {
  const ell: readonly XY[] = [
    [0, 0],
    [6000, 0],
    [6000, 2500],
    [4000, 2500],
    [4000, 5000],
    [0, 5000],
  ];
  const pose = fc.record({
    degrees: fc.integer({ min: 0, max: 359 }),
    mirrored: fc.boolean(),
    thickness: fc.integer({ min: 80, max: 400 }),
    by: fc.constantFrom<TapedBy>(...TAPED_BY),
  });

  it('closed: every wall is as long as was typed, in the way in which it was taped', () => {
    fc.assert(
      fc.property(pose, ({ degrees, mirrored, thickness, by }) => {
        const corners = ell.map(turned(degrees, mirrored));
        const walls = built(wallsAroundOutline(corners, thickness, by), thickness);
        const model = buildLevel(levelOf({ walls }));
        expect(model.rooms).toHaveLength(1);
        const lengths = walls.map((each) => wallLengths(model, each)[by]).sort((a, b) => a - b);
        const wanted = legsOf([...corners, corners[0] as XY]).sort((a, b) => a - b);
        for (const [i, length] of lengths.entries()) expect(length).toBeCloseTo(wanted[i] ?? 0, 2);
      }),
      { numRuns: 60 },
    );
  });

  it('taped outside with no room left between the walls, it gives none', () => {
    const narrow: readonly XY[] = [
      [0, 0],
      [3000, 0],
      [3000, 350],
      [0, 350],
    ];
    expect(wallsAroundOutline(narrow, 200, 'outside')).toEqual([]);
    expect(wallsAroundOutline(narrow, 200, 'inside')).toHaveLength(4);
  });

  it('left open: the walls that turn to one side are as long as was typed', () => {
    fc.assert(
      fc.property(pose, ({ degrees, mirrored, thickness, by }) => {
        const corners = [ell[0], ell[1], ell[2]].map((at) => turned(degrees, mirrored)(at as XY));
        const walls = built(builtRun(levelOf({ walls: [] }), corners, thickness, by).lines, thickness);
        const model = buildLevel(levelOf({ walls }));
        const lengths = walls.map((each) => wallLengths(model, each)[by]);
        for (const [i, length] of legsOf(corners).entries()) expect(lengths[i]).toBeCloseTo(length, 2);
      }),
      { numRuns: 60 },
    );
  });

  it('straight, it stands on its line whichever way it was taped', () => {
    const line: readonly XY[] = [
      [0, 0],
      [3000, 0],
    ];
    for (const by of TAPED_BY) expect(builtRun(levelOf({ walls: [] }), line, 200, by).lines).toEqual([line]);
  });

  it('from wall to wall with a corner: its ends stay on the lines of the walls that it meets', () => {
    const walls = boxWalls(0, 0, 6000, 4000, 200);
    const level = levelOf({ walls });
    const run: readonly XY[] = [
      [2000, 0],
      [2000, 1500],
      [6000, 1500],
    ];
    const { lines } = builtRun(level, run, 100, 'inside');
    // It turns left, so the small room is up and to the right: the walls are down and to the left of the taped line.
    expect(lines).toEqual([
      [
        [1950, 0],
        [1950, 1550],
      ],
      [
        [1950, 1550],
        [6000, 1550],
      ],
    ]);
    expect(buildLevel(levelOf({ walls: [...walls, ...built(lines, 100)] })).rooms).toHaveLength(2);
  });
});

describe('a wall of a typed length', () => {
  // 19 ft 6 in between the faces of 8 in walls.
  const clear = 5943.6;
  const level = levelOf({ walls: boxWalls(-101.6, -101.6, clear + 101.6, 4101.6, 203.2) });
  const from: XY = [-101.6, 2000];
  const typed = (length: number, by: TapedBy = 'inside') => typedWallEnd(level, from, [3000, 2000], length, by, 25.4);

  it.each([
    { by: 'inside', length: clear },
    { by: 'center', length: clear + 203.2 },
    { by: 'outside', length: clear + 406.4 },
  ] as const)('closes the room as taped $by', ({ by, length }) => {
    const end = typed(length, by);
    expect(end.reached?.id).toBe('w2');
    expect(end.at).toEqual([6045.2, 2000]);
    expect(end.length).toBeCloseTo(length, 6);
    const walls = [...level.walls, wall('p', from, end.at, 114.3)];
    expect(buildLevel(levelOf({ walls })).rooms).toHaveLength(2);
  });

  it('is joined where it is off by no more than a tape may be, and the drawn length is given', () => {
    for (const off of [-25, 12, 25]) {
      expect(typed(clear + off)).toMatchObject({ reached: { id: 'w2' }, length: expect.closeTo(clear, 6) });
    }
    expect(typed(clear - 60)).toMatchObject({ reached: null, length: clear - 60 });
  });

  it('never ends in a wall', () => {
    expect(typed(clear + 90).reached?.id).toBe('w2');
    expect(typed(clear + 190).reached?.id).toBe('w2');
  });

  it('is no longer for a wall that it passes by, or that lies behind it', () => {
    const apart = levelOf({ walls: [...level.walls, wall('s', [3000, 0], [3000, 900], 100)] });
    expect(typedWallEnd(apart, from, [3000, 2000], 3000, 'inside', 25.4).reached).toBeNull();
    expect(typedWallEnd(level, [3000, 2000], [4000, 2000], 400, 'inside', 25.4)).toMatchObject({
      at: [3400, 2000],
      reached: null,
    });
  });

  it('aslant, turned and mirrored, it closes the room all the same', () => {
    const pose = fc.record({
      degrees: fc.integer({ min: 0, max: 359 }),
      mirrored: fc.boolean(),
      down: fc.integer({ min: 300, max: 3700 }),
    });
    fc.assert(
      fc.property(pose, fc.constantFrom<TapedBy>(...TAPED_BY), ({ degrees, mirrored, down }, by) => {
        const moved = turned(degrees, mirrored);
        const walls = level.walls.map((each) => ({ ...each, from: moved(each.from), to: moved(each.to) }));
        const here = levelOf({ walls });
        const [start, aim] = [moved(from), moved([clear + 101.6, down])];
        const length = tapedLength(here, [start, aim], by);
        const end = typedWallEnd(here, start, aim, length, by, 25.4);
        expect(end.reached?.id).toBe('w2');
        expect(distance(end.at, aim)).toBeLessThan(0.01);
        expect(buildLevel(levelOf({ walls: [...walls, wall('p', start, end.at, 114.3)] })).rooms).toHaveLength(2);
      }),
      { numRuns: 60 },
    );
  });
});
