import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { mergedWalls } from '../../../geometry/edit/merge-walls.ts';
import { buildLevel } from '../../../geometry/level/build-level.ts';
import type { Level, Opening, Wall, XY } from '../../../geometry/plan/model.ts';
import { emptyLevel } from '../../../geometry/planfile/empty.ts';

const wall = (id: string, from: XY, to: XY, thickness = 200): Wall => ({ id, from, to, thickness, side: 'auto' });
const window = (on: string, offset: number): Opening => ({
  id: 'o1',
  wall: on,
  kind: 'window',
  offset,
  width: 900,
  bottom: 1200,
  top: 2000,
});
const made = (level: Level): Level => {
  const result = mergedWalls(level, ['w1', 'w2'], 'w9', 'feet-inches');
  if (!result.ok) throw new Error(result.reason);
  return result.level;
};
const levelOf = (walls: readonly Wall[], openings: readonly Opening[] = []): Level => ({
  ...emptyLevel('L1'),
  walls,
  openings,
});

describe('two walls that lie on one another', () => {
  it('drawn twice, a little askew, are the first one; a window of the second hangs on it', () => {
    const twice = levelOf([wall('w1', [0, 0], [4000, 0]), wall('w2', [4000, 8], [0, 3])], [window('w2', 1000)]);
    const { walls, openings } = made(twice);
    expect(walls).toEqual([wall('w1', [0, 0], [4000, 0])]);
    // Its middle was 1450 mm from w2's beginning at the right: 2550 from the left.
    expect(openings[0]).toMatchObject({ wall: 'w1' });
    expect(openings[0]?.offset).toBeCloseTo(2550 - 450, 1);
  });

  it('of one build that overlap are one long wall', () => {
    const level = levelOf([wall('w1', [0, 0], [4000, 0]), wall('w2', [3000, 0], [6000, 0])], [window('w2', 1900)]);
    const { walls, openings } = made(level);
    expect(walls).toEqual([wall('w1', [0, 0], [6000, 0])]);
    expect(openings).toEqual([window('w1', 4900)]);
  });

  it('lengthened at its beginning keeps its own window in its place on the page', () => {
    const level = levelOf([wall('w1', [0, 0], [4000, 0]), wall('w2', [-2000, 0], [1000, 0])], [window('w1', 500)]);
    const { walls, openings } = made(level);
    expect(walls).toEqual([wall('w1', [-2000, 0], [4000, 0])]);
    expect(openings).toEqual([window('w1', 2500)]);
  });

  it('a partition laid on a foundation begins where the foundation ends', () => {
    const level = levelOf(
      [wall('w1', [0, 0], [4000, 0], 300), wall('w2', [1000, 5], [6000, 5], 115)],
      [window('w2', 3500)],
    );
    const { walls, openings } = made(level);
    expect(walls).toEqual([wall('w1', [0, 0], [4000, 0], 300), wall('w2', [4000, 0], [6000, 5], 115)]);
    // From 4500 to 5400 on the page.
    expect(openings[0]).toMatchObject({ wall: 'w2' });
    expect(openings[0]?.offset).toBeCloseTo(500, 1);
  });

  it('a short thick wall in the middle of a thin one parts it in two', () => {
    const level = levelOf([wall('w1', [2000, 0], [3000, 0], 300), wall('w2', [0, 0], [5000, 0], 115)]);
    expect(made(level).walls).toEqual([
      wall('w1', [2000, 0], [3000, 0], 300),
      wall('w2', [0, 0], [2000, 0], 115),
      wall('w9', [3000, 0], [5000, 0], 115),
    ]);
  });

  it('a wall that met the one that goes meets the one that stays', () => {
    const level = levelOf([
      wall('w1', [0, 0], [4000, 0]),
      wall('w2', [0, 10], [2000, 10]),
      wall('w3', [2000, 10], [2000, 3000]),
    ]);
    expect(made(level).walls[1]).toEqual(wall('w3', [2000, 0], [2000, 3000]));
  });

  it('is refused where they cross, and where two windows would stand in one another', () => {
    const crossing = levelOf([wall('w1', [0, 0], [4000, 0]), wall('w2', [1000, -1000], [1000, 1000])]);
    expect(mergedWalls(crossing, ['w1', 'w2'], 'w9', 'feet-inches')).toMatchObject({ ok: false });
    const twice = levelOf(
      [wall('w1', [0, 0], [4000, 0]), wall('w2', [0, 0], [4000, 0])],
      [window('w1', 1000), { ...window('w2', 1500), id: 'o2' }],
    );
    const result = mergedWalls(twice, ['w1', 'w2'], 'w9', 'feet-inches');
    expect(result.ok ? '' : result.reason).toContain('would lie 1 ft 3 3/4 in over a window');
  });

  it('leaves no wall lying on another, and closes every room that was closed', () => {
    // Coordinates as in a drawing: multiples of 0.0001 mm.
    const off = fc.integer({ min: -50_000, max: 50_000 }).map((parts) => parts / 10_000);
    fc.assert(
      fc.property(
        off,
        off,
        fc.integer({ min: 200, max: 3800 }),
        fc.constantFrom(115, 200, 300),
        (a, b, end, thickness) => {
          const level = levelOf([
            wall('w1', [0, 0], [4000, 0]),
            wall('e', [4000, 0], [4000, 3000]),
            wall('s', [4000, 3000], [0, 3000]),
            wall('n', [0, 3000], [0, 0]),
            wall('w2', [0, a], [end, b], thickness),
          ]);
          const model = buildLevel(made(level));
          expect(model.notices.filter(({ kind }) => kind === 'walls-overlap')).toEqual([]);
          expect(model.rooms).toHaveLength(1);
        },
      ),
      { numRuns: 200 },
    );
  });
});
