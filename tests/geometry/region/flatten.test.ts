import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { ArcEdge } from '../../../geometry/arrangement/types.ts';
import { buildLevel } from '../../../geometry/level/build-level.ts';
import type { XY } from '../../../geometry/plan/model.ts';
import { distance } from '../../../geometry/plane/point.ts';
import type { Ring } from '../../../geometry/plane/types.ts';
import { emptyPlan } from '../../../geometry/planfile/empty.ts';
import { flattened } from '../../../geometry/region/flatten.ts';
import { levelRegion } from '../../../geometry/region/level-region.ts';
import { arcRingsContain, edgeEnds, nearestOnEdge } from '../../../geometry/region/nearest.ts';
import { evenly } from '../../helpers/evenly.ts';
import { seededLevel } from '../../helpers/seeded-level.ts';

/** Points along the edges of a polygon, corners among them. */
function pointsOn(ring: Ring, perEdge: number): XY[] {
  return ring.flatMap((a, i) => {
    const b = ring[(i + 1) % ring.length] as XY;
    return Array.from({ length: perEdge }, (_, k): XY => {
      const t = k / perEdge;
      return [a[0] + (b[0] - a[0]) * t, a[1] + (b[1] - a[1]) * t];
    });
  });
}

const arcs = fc.record({
  kind: fc.constant('arc' as const),
  center: fc.tuple(evenly(-1e4, 1e4), evenly(-1e4, 1e4)),
  radius: evenly(0.01, 5000),
  start: evenly(-4, 4),
  sweep: fc.oneof(evenly(-6.28, -0.001), evenly(0.001, 6.28)),
});

describe('flattened(outlines, tolerance)', () => {
  it('a circle of radius 100 in four quarters, 8.24 mm of tolerance: an octagon about it, corners at 108.24 mm', () => {
    // 100 / cos(22.5°) = 108.2392: computed manually.
    const quarters = [0, 1, 2, 3].map(
      (k): ArcEdge => ({ kind: 'arc', center: [5, 7], radius: 100, start: (k * Math.PI) / 2, sweep: Math.PI / 2 }),
    );
    const [ring = []] = flattened([quarters], 8.24);
    const out = ring.map((p) => distance(p, [5, 7]));
    expect(out).toHaveLength(12);
    for (let k = 0; k < 12; k += 3) {
      expect(out[k]).toBeCloseTo(100, 9);
      expect(out[k + 1]).toBeCloseTo(108.2392, 3);
      expect(out[k + 2]).toBeCloseTo(108.2392, 3);
    }
  });

  it('keeps straight edges as they are', () => {
    const corners: XY[] = [
      [0, 0],
      [10, 0],
      [10, 5],
    ];
    const ring = corners.map((from, i) => ({ kind: 'line' as const, from, to: corners[(i + 1) % 3] as XY }));
    expect(flattened([ring], 1)).toEqual([corners]);
  });

  it('lies outside the circle of an arc, by no more than the tolerance', () => {
    fc.assert(
      fc.property(arcs, evenly(0.001, 20), (arc, tolerance) => {
        const chord = { kind: 'line' as const, from: edgeEnds(arc)[1], to: edgeEnds(arc)[0] };
        const [ring = []] = flattened([[arc, chord]], tolerance);
        // The last edge is the chord, which passes through the circle.
        const path = pointsOn(ring, 9).slice(0, -9);
        let [least, most] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
        for (const p of path) {
          const out = distance(p, arc.center) - arc.radius;
          [least, most] = [Math.min(least, out), Math.max(most, out)];
        }
        expect(least).toBeGreaterThan(-1e-8);
        expect(most).toBeLessThan(tolerance + 1e-8);
      }),
    );
  });

  it('of the regions of a house lies in them, within the tolerance of their boundary', () => {
    const plan = { ...emptyPlan(), levels: [seededLevel('house')] };
    const region = levelRegion(plan, buildLevel(seededLevel('house')), { base: 762, radius: 50.8, tall: 25.4 });
    const tolerance = 1.5875;
    let checked = 0;
    for (const { rings } of region.rooms) {
      const edges = rings.flat();
      for (const p of flattened(rings, tolerance).flatMap((ring) => pointsOn(ring, 9))) {
        checked++;
        const off = Math.min(...edges.map((edge) => distance(nearestOnEdge(edge, p), p)));
        expect(off).toBeLessThan(tolerance + 1e-6);
        if (off > 1e-6) expect(arcRingsContain(rings, p)).toBe(true);
      }
    }
    expect(checked).toBeGreaterThan(1000);
  });
});
