import { describe, expect, it } from 'vitest';
import type { ArcRing } from '../../../geometry/arrangement/types.ts';
import { buildLevel } from '../../../geometry/level/build-level.ts';
import type { XY } from '../../../geometry/plan/model.ts';
import { levelRegion } from '../../../geometry/region/level-region.ts';
import { arcRingsContain, edgeEnds } from '../../../geometry/region/nearest.ts';
import type { LevelRegion } from '../../../geometry/region/types.ts';
import { fixturePlan } from '../../helpers/fixtures.ts';

/** Returns the widest gap between an edge's end and the start of the next, mm. */
function widestGap(rings: readonly ArcRing[]): number {
  return Math.max(
    0,
    ...rings.flatMap((ring) =>
      ring.map((edge, i) => {
        const [, end] = edgeEnds(edge);
        const [start] = edgeEnds(ring[(i + 1) % ring.length] ?? edge);
        return Math.hypot(start[0] - end[0], start[1] - end[1]);
      }),
    ),
  );
}

function regionOf(name: string): LevelRegion {
  const plan = fixturePlan(name);
  const [level] = plan.levels;
  const [probe] = level?.detectors ?? [];
  if (!level || !probe) throw new Error(`${name} has no level with a detector`);
  return levelRegion(plan, buildLevel(level), probe);
}

describe('the outline of a region', () => {
  it('closes where a wall without thickness meets an inner corner', () => {
    const [room] = regionOf('thin-wall-at-inner-corner').rooms;
    expect(widestGap(room?.rings ?? [])).toBeLessThan(1e-3);
    // In coordinates of the drawing, with the corner at 0, 0; zones of outside walls end 304.8 + 50.8 − 0.1 = 355.5
    // from their faces.
    const at = (x: number, y: number): XY => [12345.678 + x, 777.7 + y];
    const holds = (p: XY) => arcRingsContain(room?.rings ?? [], p);
    expect([at(1000, 1000), at(-2500, 2000), at(3000, -1500), at(357, -1000)].map(holds)).toEqual([
      true,
      true,
      true,
      true,
    ]);
    expect([at(-1000, 400), at(354, -1000), at(-200, -200), at(3700, 0)].map(holds)).toEqual([
      false,
      false,
      false,
      false,
    ]);
  });

  it('closes over the hair of wall face that a stub without thickness leaves', () => {
    const [room] = regionOf('thin-stub').rooms;
    expect(widestGap(room?.rings ?? [])).toBeLessThan(1e-3);
    expect(room?.rings.length).toBe(1);
    // 355.5 from the faces of the walls, which are at 100: the zone of the stub, 152.3 from its end at 200, is inside
    // that.
    const holds = (p: XY) => arcRingsContain(room?.rings ?? [], p);
    const free: XY[] = [
      [2000, 456],
      [1600, 456],
      [2400, 456],
      [456, 456],
      [5544, 3544],
      [3000, 2000],
    ];
    const taken: XY[] = [
      [2000, 455],
      [1600, 455],
      [455, 2000],
      [2000, 3545],
      [5545, 1000],
      [-300, 2000],
      [3000, -800],
    ];
    expect(free.map(holds)).toEqual(free.map(() => true));
    expect(taken.map(holds)).toEqual(taken.map(() => false));
  });
});
