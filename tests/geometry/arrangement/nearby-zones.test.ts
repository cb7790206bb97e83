import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { NearbyZones } from '../../../geometry/arrangement/nearby-zones.ts';
import { mayReach, ringSpace } from '../../../geometry/arrangement/space.ts';
import { growZone } from '../../../geometry/arrangement/zone.ts';
import { ringBody } from '../../../geometry/plane/body.ts';
import type { Ring } from '../../../geometry/plane/types.ts';

const place = fc.integer({ min: -50, max: 50 });
const size = fc.integer({ min: 1, max: 40 });
const box = fc.record({ x: place, y: place, width: size, height: size }).map(
  ({ x, y, width, height }): Ring => [
    [x, y],
    [x + width, y],
    [x + width, y + height],
    [x, y + height],
  ],
);
/** A room rotated to stand on one corner. */
const diamond = fc.record({ x: place, y: place, half: size }).map(
  ({ x, y, half }): Ring => [
    [x, y - half],
    [x + half, y],
    [x, y + half],
    [x - half, y],
  ],
);

describe('what may reach into a room', () => {
  const room = ringSpace([
    [
      [0, -10],
      [10, 0],
      [0, 10],
      [-10, 0],
    ],
  ]);

  it.each([
    { name: 'in the room', box: { minX: -1, minY: -1, maxX: 1, maxY: 1 }, may: true },
    { name: 'beside its extent', box: { minX: 11, minY: 0, maxX: 12, maxY: 1 }, may: false },
    { name: 'in the corner of its extent, beyond its wall', box: { minX: 6, minY: 6, maxX: 9, maxY: 9 }, may: false },
    { name: 'in the corner of its extent, touching its wall', box: { minX: 5, minY: 5, maxX: 9, maxY: 9 }, may: true },
    { name: 'around it', box: { minX: -20, minY: -20, maxX: 20, maxY: 20 }, may: true },
  ])('a box $name: $may', ({ box: extent, may }) => {
    expect(mayReach(room, extent)).toBe(may);
  });
});

describe('zones near a room', () => {
  it('are those that may reach into it, in the order of the list, however often it is asked', () => {
    fc.assert(
      fc.property(
        fc.array(box, { maxLength: 30 }),
        fc.array(diamond, { minLength: 20, maxLength: 20 }),
        (boxes, rooms) => {
          const zones = boxes.map((ring) => growZone(ringBody(ring), 0));
          const nearby = new NearbyZones(zones);
          for (const space of rooms.map((ring) => ringSpace([ring]))) {
            expect(nearby.to(space)).toEqual(zones.filter((zone) => mayReach(space, zone)));
          }
        },
      ),
    );
  });
});
