import { describe, expect, it } from 'vitest';
import { withWallLength } from '../../../geometry/edit/stretch.ts';
import { wallLength } from '../../../geometry/plan/items.ts';
import type { Level, Wall, XY } from '../../../geometry/plan/model.ts';
import { emptyLevel } from '../../../geometry/planfile/empty.ts';

const wall = (id: string, from: XY, to: XY): Wall => ({ id, from, to, thickness: 100, side: 'auto' });
const ends = (level: Level, id: string) => {
  const found = level.walls.find((each) => each.id === id);
  return found && [found.from, found.to];
};
const square: Level = {
  ...emptyLevel('L1'),
  walls: [
    wall('top', [0, 0], [4000, 0]),
    wall('right', [4000, 0], [4000, 3000]),
    wall('bottom', [4000, 3000], [0, 3000]),
    wall('left', [0, 3000], [0, 0]),
  ],
};

describe('withWallLength', () => {
  it('keeps a square room square: the far wall is shifted, the one across is stretched', () => {
    const longer = withWallLength(square, 'top', 5000);
    expect(ends(longer, 'top')).toEqual([
      [0, 0],
      [5000, 0],
    ]);
    expect(ends(longer, 'right')).toEqual([
      [5000, 0],
      [5000, 3000],
    ]);
    expect(ends(longer, 'bottom')).toEqual([
      [5000, 3000],
      [0, 3000],
    ]);
    expect(ends(longer, 'left')).toEqual([
      [0, 3000],
      [0, 0],
    ]);
  });

  it('takes a partition along that butts against the shifted wall', () => {
    const level = { ...square, walls: [...square.walls, wall('part', [1000, 1500], [4000, 1500])] };
    expect(ends(withWallLength(level, 'top', 4500), 'part')).toEqual([
      [1000, 1500],
      [4500, 1500],
    ]);
  });

  it('keeps a window of a wall that is stretched at its beginning where it stands on the page', () => {
    const window = {
      id: 'o1',
      wall: 'bottom',
      kind: 'window' as const,
      offset: 500,
      width: 800,
      bottom: 900,
      top: 1500,
    };
    const longer = withWallLength({ ...square, openings: [window] }, 'top', 5000);
    // The wall begins 1000 farther right, so the near jamb at x = 3500 is now 1500 from its beginning.
    expect(longer.openings[0]?.offset).toBe(1500);
  });

  it('keeps the fixed corner of a triangle', () => {
    const triangle = {
      ...emptyLevel('L1'),
      walls: [wall('a', [0, 0], [4000, 0]), wall('b', [4000, 0], [2000, 3000]), wall('c', [2000, 3000], [0, 0])],
    };
    const longer = withWallLength(triangle, 'a', 5000);
    expect(ends(longer, 'a')).toEqual([
      [0, 0],
      [5000, 0],
    ]);
    expect(ends(longer, 'c')?.[1]).toEqual([0, 0]);
  });

  it('leaves the level as it is for the same length, an unknown wall and a wall without length', () => {
    expect(withWallLength(square, 'top', 4000)).toBe(square);
    expect(withWallLength(square, 'no-such', 4000)).toBe(square);
    const dot = { ...square, walls: [wall('dot', [1, 1], [1, 1])] };
    expect(withWallLength(dot, 'dot', 4000)).toBe(dot);
  });

  it('gives an oblique wall the length that was asked for', () => {
    const level = { ...emptyLevel('L1'), walls: [wall('a', [100, 200], [400, 600])] };
    const longer = withWallLength(level, 'a', 1000);
    expect(longer.walls.map(wallLength)).toEqual([1000]);
    expect(ends(longer, 'a')?.[1]).toEqual([700, 1000]); // a 3-4-5 triangle
  });
});
