import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { ringBody } from '../../../geometry/body.ts';
import { overlaps } from '../../../geometry/level/floors.ts';
import { grown } from '../../../geometry/region/free-boundary.ts';
import { Nearby } from '../../../geometry/region/nearby.ts';

const place = fc.integer({ min: -50, max: 50 });
const box = fc.record({
  x: place,
  y: place,
  width: fc.integer({ min: 1, max: 40 }),
  height: fc.integer({ min: 1, max: 40 }),
});

function extentOf({ x, y, width, height }: { x: number; y: number; width: number; height: number }) {
  return { minX: x, minY: y, maxX: x + width, maxY: y + height };
}

describe('zones near an extent', () => {
  it('are those whose boxes meet it, in the order of the list, however often it is asked', () => {
    fc.assert(
      fc.property(fc.array(box, { maxLength: 30 }), fc.array(box, { minLength: 20, maxLength: 20 }), (boxes, asked) => {
        const zones = boxes.map(({ x, y, width, height }) =>
          grown(
            ringBody([
              [x, y],
              [x + width, y],
              [x + width, y + height],
              [x, y + height],
            ]),
            0,
          ),
        );
        const nearby = new Nearby(zones);
        for (const extent of asked.map(extentOf)) {
          expect(nearby.to(extent)).toEqual(zones.filter((zone) => overlaps(zone, extent)));
        }
      }),
    );
  });
});
