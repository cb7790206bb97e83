import { describe, expect, it } from 'vitest';
import { checkDetector } from '../../../geometry/check/check-detector.ts';
import { supports } from '../../../geometry/check/support.ts';
import { buildLevel } from '../../../geometry/level/build-level.ts';
import type { Detector, Level, PlanObject, XY } from '../../../geometry/plan/model.ts';
import type { Probe } from '../../../geometry/region/types.ts';
import { bestGroups } from '../../../geometry/search/best-pairs.ts';
import { bestSpots } from '../../../geometry/search/best-spots.ts';
import { companionSpot } from '../../../geometry/search/companion.ts';
import { isSeat } from '../../../geometry/search/seats.ts';
import { drawn, loop, planOf, rectangle } from '../../helpers/drawn.ts';

const PROBE: Probe = { base: 762, radius: 50.8, tall: 25.4 };
const box = (id: string, name: string, center: XY, width: number, depth: number, top = 762, turn = 0): PlanObject => ({
  id,
  name,
  shape: { box: { center, width, depth, turn } },
  bottom: 0,
  top,
});
const DESK = box('t1', 'Desk', [3000, 2500], 1200, 600);
function den(objects: readonly PlanObject[], detectors: readonly Detector[] = []): Level {
  const walls = loop('a', rectangle(-100, -100, 6200, 5200));
  const rooms = [{ id: 'r', name: 'Den', use: 'den', at: [50, 50] }] as const;
  return drawn(walls, { rooms, ceiling: 2500, objects, detectors });
}
const detector = (id: string, at: XY, pair: string | null = null): Detector => ({ ...PROBE, id, label: id, at, pair });

describe('places on furniture', () => {
  it('of a pair are on one piece, each with its whole foot 2 in from every edge', () => {
    const level = den([box('t0', 'Sofa', [1000, 1000], 2100, 900, 864), DESK]);
    const [pair] = bestGroups(planOf(level), buildLevel(level), PROBE, 2, { onFurniture: true });
    expect(pair?.on).toBe('t1');
    for (const [x, y] of pair?.at ?? []) {
      // The desk is 1200 × 600 about (3000, 2500); 101.6 is the radius and 2 in.
      expect(Math.abs(x - 3000)).toBeLessThanOrEqual(600 - 101.6 + 0.11);
      expect(Math.abs(y - 2500)).toBeLessThanOrEqual(300 - 101.6 + 0.11);
    }
  });

  it('are never on a sofa or a bed, whatever it is called, and on a bedside table', () => {
    for (const name of ['Sofa', 'sofa bed', 'Bed', 'Beds', 'Arm chair', 'Love seat', 'stool'])
      expect(isSeat({ name })).toBe(true);
    for (const name of ['Desk', 'Bed table', 'Bedside table', 'Chest', 'Workbench', 'Boxes', ''])
      expect(isSeat({ name })).toBe(false);
    const level = den([box('t0', 'Sofa', [3000, 2500], 2100, 900)]);
    const spots = bestSpots(planOf(level), buildLevel(level), PROBE, { onFurniture: true, count: 5 });
    expect(spots.map(({ on }) => on)).not.toContain('t0');
  });

  it('on a narrow shelf are in its middle, on one too narrow nowhere', () => {
    const narrow = den([box('t1', 'Shelf', [3000, 2500], 900, 150)]);
    const [spot] = bestSpots(planOf(narrow), buildLevel(narrow), PROBE, { onFurniture: true });
    expect(spot?.on).toBe('t1');
    // 75 to either edge, 24.2 beyond the footprint: nine tenths of that stay free.
    expect(Math.abs((spot?.at[1] ?? 0) - 2500)).toBeLessThan(2.6);
    const ledge = den([box('t1', 'Ledge', [3000, 2500], 900, 90)]);
    expect(bestSpots(planOf(ledge), buildLevel(ledge), PROBE, { onFurniture: true })[0]?.on).toBeNull();
  });
});

describe('a companion on furniture', () => {
  it('is never set past the edge, wherever the first one stands', () => {
    for (let x = 2460; x <= 3540; x += 60) {
      for (let y = 2260; y <= 2740; y += 60) {
        const first = detector('d1', [x, y]);
        const level = den([DESK], [first]);
        const spot = companionSpot(planOf(level), buildLevel(level), first);
        expect(spot).not.toBeNull();
        const second = detector('d2', spot?.at ?? [0, 0], 'A');
        expect(supports(DESK, second)).toBe(true);
        const both = den([DESK], [{ ...first, pair: 'A' }, second]);
        expect(
          checkDetector(planOf(both), buildLevel(both), second).checks.find(({ rule }) => rule === 'companion')
            ?.verdict,
        ).toBe('clear'); // 5 in apart: 1 in more than 4 in, and the tape tolerance is 1 in
      }
    }
  });

  it('has no place on a stool-sized table: none is offered beside it in the air', () => {
    const small = box('t1', 'Side table', [3000, 2500], 200, 200);
    const level = den([small], [detector('d1', [3000, 2500])]);
    expect(companionSpot(planOf(level), buildLevel(level), level.detectors[0] as Detector)).toBeNull();
  });
});
