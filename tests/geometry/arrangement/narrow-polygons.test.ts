import { describe, expect, it } from 'vitest';
import { buildLevel } from '../../../geometry/level/build-level.ts';
import type { XY } from '../../../geometry/plan/model.ts';
import { signedArea } from '../../../geometry/plane/ring.ts';
import { flattened } from '../../../geometry/region/flatten.ts';
import { levelRegion } from '../../../geometry/region/level-region.ts';
import type { Probe } from '../../../geometry/region/types.ts';
import { areaBounds } from '../../helpers/certified-bounds.ts';
import { detectorAt, drawn, loop, planOf, rectangle } from '../../helpers/drawn.ts';
import { Dice } from '../../helpers/random-level/dice.ts';

/** Very narrow polygons with many corners within 0.01 mm of each other. */
function hairs(dice: Dice, count: number) {
  return Array.from({ length: count }, (_, i) => {
    const [x, y] = [dice.between(1500, 6500), dice.between(1500, 4500)];
    const angle = dice.between(0, 2 * Math.PI);
    const length = dice.between(50, 1500);
    const [u, v]: XY = [Math.cos(angle), Math.sin(angle)];
    const at = (along: number, across: number): XY => [x + u * along - v * across, y + v * along + u * across];
    // Out along one side and back along the other, so that no edge crosses another.
    const side = (sign: 1 | -1) =>
      [dice.between(0, 0.01), dice.between(0.02, 0.99) * length, length - dice.between(0, 0.01)].map((along) =>
        at(along, sign * dice.between(0.0005, 0.005)),
      );
    const points = [...side(1), ...side(-1).reverse()];
    return { id: `o${i}`, name: '', shape: { polygon: { points } }, bottom: 0, top: 2000 };
  });
}

describe('the region about polygons as thin as a hair', () => {
  it.each(Array.from({ length: 40 }, (_, i) => i + 1))('has the area of its rings, seed %d', (seed) => {
    const dice = new Dice(seed);
    const level = drawn(loop('h', rectangle(0, 0, 8000, 6000)), {
      rooms: [{ id: 'r', name: '', use: 'family-room', at: [4000, 3000] }],
      objects: hairs(dice, dice.int(1, 4)),
      detectors: [detectorAt([4000, 3000])],
    });
    const plan = planOf(level);
    const probe: Probe = { base: 762, radius: dice.pick([50.8, 38, 0]), tall: 25.4 };
    const model = buildLevel(level);
    const [room] = levelRegion(plan, model, probe).rooms;
    if (!room) throw new Error('no room');
    const drawnArea = flattened(room.rings, 1e-4).reduce((sum, ring) => sum + signedArea(ring), 0);
    // Chords within 1e-4 mm of the arcs, along some 30 m of outline.
    expect(Math.abs(room.area - drawnArea)).toBeLessThan(5);
    const { least, most } = areaBounds(plan, model, probe, room.room, 30);
    expect(room.area).toBeGreaterThan(least * (1 - 1e-9) - 1);
    expect(room.area).toBeLessThan(most * (1 + 1e-9) + 1);
  });
});
