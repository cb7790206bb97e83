import { describe, expect, it } from 'vitest';
import { buildLevel } from '../../../geometry/level/build-level.ts';
import type { Level, Wall, XY } from '../../../geometry/plan/model.ts';
import { emptyLevel } from '../../../geometry/planfile/empty.ts';
import { thicknessFrom } from '../../../src/state/wall-chain.ts';
import { FIRST_WALL_SETTINGS } from '../../../src/state/wall-settings.ts';

const { outer, partition } = FIRST_WALL_SETTINGS;
const wall = (id: string, from: XY, to: XY, thickness = outer): Wall => ({ id, from, to, thickness, side: 'auto' });
const startedOn = (walls: readonly Wall[], start: XY) => {
  const level: Level = { ...emptyLevel('L1'), walls };
  return thicknessFrom(buildLevel(level), start, FIRST_WALL_SETTINGS);
};

describe('the thickness of a new wall', () => {
  const OPEN = [wall('w1', [0, 0], [6000, 0]), wall('w2', [6000, 0], [6000, 4000])];

  it('is that of an exterior wall in the open', () => {
    expect(startedOn([], [0, 0])).toBe(outer);
    expect(startedOn(OPEN, [-3000, 3000])).toBe(outer);
  });

  it('is that of a partition on a standing wall, and where two meet', () => {
    expect(startedOn(OPEN, [3000, 0])).toBe(partition);
    expect(startedOn(OPEN, [6000, 0])).toBe(partition);
  });

  it('goes on as it was from the open end of a wall: an outline that was ended early, a partition', () => {
    expect(startedOn(OPEN, [6000, 4000])).toBe(outer);
    expect(startedOn(OPEN, [0, 0])).toBe(outer);
    expect(startedOn([...OPEN, wall('w3', [3000, 0], [3000, 2000], partition)], [3000, 2000])).toBe(partition);
  });

  it('is that of a partition within a room, at an open end too', () => {
    const room = [...OPEN, wall('w3', [6000, 4000], [0, 4000]), wall('w4', [0, 4000], [0, 0])];
    const stub = wall('w5', [3000, 0], [3000, 2000], outer);
    expect(startedOn([...room, stub], [3000, 2000])).toBe(partition);
    expect(startedOn(room, [3000, 2000])).toBe(partition);
  });
});
