import { describe, expect, it } from 'vitest';
import { containsTest } from '../../../geometry/arrangement/contains-test.ts';
import { freeBoundary, Scratch } from '../../../geometry/arrangement/free-boundary.ts';
import { linkRings } from '../../../geometry/arrangement/link-rings.ts';
import { STRIDE } from '../../../geometry/arrangement/pieces.ts';
import { reversedRing, ringsArea } from '../../../geometry/arrangement/rings.ts';
import { EVERYWHERE } from '../../../geometry/arrangement/space.ts';
import { type GrownZone, growZone } from '../../../geometry/arrangement/zone.ts';
import { INDEX_THRESHOLD } from '../../../geometry/arrangement/zone-index.ts';
import { highDegreeRing } from '../../../geometry/level/joints.ts';
import type { XY } from '../../../geometry/plan/model.ts';
import { ringBody } from '../../../geometry/plane/body.ts';
import { ringsContain } from '../../../geometry/plane/ring.ts';
import { Dice } from '../../helpers/random-level/dice.ts';

/** Bars of 100 by 4000 mm in all directions from one point, and the ring around that point, as zones. */
function star(count: number, grow: number): GrownZone[] {
  const bars = Array.from({ length: count - 1 }, (_, i) => {
    const angle = (2 * Math.PI * (i + 0.3)) / count;
    const [ux, uy] = [Math.cos(angle), Math.sin(angle)];
    const corner = (along: number, aside: number): XY => [along * ux - aside * uy, along * uy + aside * ux];
    return growZone(ringBody([corner(0, -50), corner(4000, -50), corner(4000, 50), corner(0, 50)]), grow);
  });
  return [...bars, growZone(ringBody(highDegreeRing([0, 0], 50)), grow)];
}

function outlineOf(zones: readonly GrownZone[]): { rings: number; area: number } {
  // The free area is outside: reversed, the rings contain the zones.
  const rings = linkRings(freeBoundary(zones, EVERYWHERE)).map(reversedRing);
  return { rings: rings.length, area: ringsArea(rings) };
}

describe('very many zones about one point', () => {
  it.each([0, 150])('growZone by %d are cut a few times each, not each by each', (grow) => {
    const scratch = new Scratch();
    const count = 1500;
    freeBoundary(star(count, grow), EVERYWHERE, scratch);
    const pieces = scratch.pieces.length / STRIDE;
    // Comparing all pairs would give more than a thousand per wall.
    expect(scratch.cuts.end(pieces - 1)).toBeLessThan(100 * count);
  });

  it.each([0, 150])('growZone by %d have the outline that few have', (grow) => {
    const few = star(INDEX_THRESHOLD, grow);
    // One zone is added twice, so that the longer list uses the index.
    const many = [...few, few[0] as GrownZone];
    const [one, other] = [outlineOf(few), outlineOf(many)];
    expect(other.rings).toBe(one.rings);
    expect(one.area).toBeGreaterThan(4000 * 4000);
    expect(Math.abs(other.area - one.area)).toBeLessThan(1e-3);
  });
});

describe('whether rings with very many corners contain a point', () => {
  it('is answered as for rings with few', () => {
    const dice = new Dice(7);
    const toothed = Array.from({ length: 1000 }, (_, i): XY => {
      const [angle, reach] = [(2 * Math.PI * i) / 1000, i % 2 === 0 ? 3000 : 4000];
      return [reach * Math.cos(angle), reach * Math.sin(angle)];
    });
    const rings = [
      toothed,
      [
        [0, 0],
        [0, 900],
        [900, 0],
      ] as XY[],
    ];
    const contains = containsTest(rings);
    for (let i = 0; i < 5000; i++) {
      const p: XY = i % 10 === 0 ? dice.pick(toothed) : [dice.between(-4500, 4500), dice.between(-4500, 4500)];
      expect(contains(...p)).toBe(ringsContain(rings, p));
    }
  });
});
