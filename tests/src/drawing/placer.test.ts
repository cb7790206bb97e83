import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { createPlacer, overlap } from '../../../src/drawing/labels/placer.ts';
import { type Slot, slotCorners } from '../../../src/drawing/labels/slot.ts';
import { evenly } from '../../helpers/evenly.ts';

const slotArb: fc.Arbitrary<Slot> = fc.record({
  x: evenly(0, 40),
  y: evenly(0, 40),
  width: evenly(0.5, 20),
  height: evenly(0.5, 8),
  turn: fc.integer({ min: -90, max: 90 }),
});

/** Whether a point lies in a turned rectangle, by turning the point back. */
function holds({ x, y, width, height, turn }: Slot, px: number, py: number): boolean {
  const [cos, sin] = [Math.cos((turn * Math.PI) / 180), Math.sin((turn * Math.PI) / 180)];
  const [dx, dy] = [px - x, py - y];
  return Math.abs(dx * cos + dy * sin) < width / 2 && Math.abs(dy * cos - dx * sin) < height / 2;
}

/** A grid of points over a slot, its edge included. */
function pointsOf(slot: Slot): readonly (readonly [number, number])[] {
  const [a, b, , d] = slotCorners(slot);
  if (!a || !b || !d) return [];
  const shares = Array.from({ length: 21 }, (_, i) => i / 20);
  return shares.flatMap((s) =>
    shares.map(
      (t) => [a[0] + (b[0] - a[0]) * s + (d[0] - a[0]) * t, a[1] + (b[1] - a[1]) * s + (d[1] - a[1]) * t] as const,
    ),
  );
}

describe('overlap(a, b)', () => {
  it('holds whenever a point of the one lies in the other, and does not depend on the order', () => {
    fc.assert(
      fc.property(slotArb, slotArb, (a, b) => {
        const shared = pointsOf(a).some(([x, y]) => holds(b, x, y)) || pointsOf(b).some(([x, y]) => holds(a, x, y));
        if (shared) expect(overlap(a, b)).toBe(true);
        expect(overlap(b, a)).toBe(overlap(a, b));
      }),
    );
  });

  it('is not fooled by corners that pass close by', () => {
    const lying = { x: 0, y: 0, width: 10, height: 2, turn: 0 };
    // A square on its corner: its lowest point is 0.414 under y = 2 − 1, by half a diagonal of 2.
    expect(overlap(lying, { x: 0, y: 2.4, width: 2, height: 2, turn: 45 })).toBe(true);
    expect(overlap(lying, { x: 0, y: 2.42, width: 2, height: 2, turn: 45 })).toBe(false);
  });
});

describe('createPlacer', () => {
  const area = { x: 0, y: 0, width: 40, height: 40 };

  it('never gives the same ground twice, and nothing beyond its area', () => {
    fc.assert(
      fc.property(fc.array(slotArb, { maxLength: 30 }), (slots) => {
        const placer = createPlacer(area, 10);
        const placed = slots.filter((slot) => {
          const free = placer.isFree(slot);
          if (free) placer.take(slot);
          return free;
        });
        placed.forEach((a, i) => {
          for (const b of placed.slice(i + 1)) expect(overlap(a, b)).toBe(false);
          for (const [x, y] of slotCorners(a)) expect(Math.min(x, y, 40 - x, 40 - y)).toBeGreaterThanOrEqual(0);
        });
      }),
    );
  });

  it('lets a name across an outline only when told to', () => {
    const placer = createPlacer(area, 10);
    const slot = { x: 20, y: 20, width: 6, height: 3, turn: 0 };
    placer.take(slot, 'thing', 't1');
    expect(placer.isFree(slot)).toBe(false);
    expect(placer.isFree(slot, ['thing'])).toBe(true);
    expect(placer.isFree(slot, [], 't1')).toBe(true);
  });

  it('works the parts of a slot out when something first meets it, and only they are taken', () => {
    const placer = createPlacer(area, 10);
    let times = 0;
    placer.take({ x: 20, y: 20, width: 20, height: 20, turn: 0 }, 'outline', 't1', () => {
      times += 1;
      return [{ x: 11, y: 20, width: 2, height: 20, turn: 0 }];
    });
    expect(placer.isFree({ x: 35, y: 35, width: 4, height: 4, turn: 0 })).toBe(true);
    expect(times).toBe(0);
    expect(placer.isFree({ x: 20, y: 20, width: 4, height: 4, turn: 0 })).toBe(true);
    expect(placer.isFree({ x: 11, y: 20, width: 4, height: 4, turn: 0 })).toBe(false);
    expect(times).toBe(1);
  });

  it('counts how much of what is written a slot would cover', () => {
    const placer = createPlacer(area, 10);
    placer.take({ x: 10, y: 10, width: 10, height: 10, turn: 0 });
    placer.take({ x: 30, y: 30, width: 10, height: 10, turn: 0 }, 'wall');
    expect(placer.covered({ x: 15, y: 15, width: 10, height: 10, turn: 0 })).toBeCloseTo(25);
    expect(placer.covered({ x: 30, y: 30, width: 10, height: 10, turn: 0 })).toBe(0);
  });
});
