import fc from 'fast-check';
import { expect, it } from 'vitest';
import {
  areaOf,
  exposedStrips,
  extentOf,
  type RectPx,
  snappedOut,
  stageRect,
} from '../../../../src/editor/stage/rect.ts';

const whole = stageRect({ width: 300, height: 200 }, 50);
const holds = ({ left, top, right, bottom }: RectPx, x: number, y: number) =>
  x >= left && x < right && y >= top && y < bottom;

it('the strips of a moved picture are what the moved picture leaves bare, once each', () => {
  fc.assert(
    fc.property(fc.integer({ min: -80, max: 80 }), fc.integer({ min: -80, max: 80 }), (dx, dy) => {
      const found = exposedStrips(whole, dx, dy);
      const bare = areaOf(whole) - (400 - Math.abs(dx)) * (300 - Math.abs(dy));
      expect(found.reduce((sum, strip) => sum + areaOf(strip), 0)).toBe(bare);
      // At the corners and in the middle: nothing of what is kept, all of what is not.
      for (const [x, y] of [
        [-49.5, -49.5],
        [349.5, 249.5],
        [-49.5, 249.5],
        [349.5, -49.5],
        [150.5, 100.5],
      ] as const) {
        const isKept = holds(whole, x - dx, y - dy);
        expect(found.filter((strip) => holds(strip, x, y))).toHaveLength(isKept ? 0 : 1);
      }
    }),
  );
});

it('whole pixels hold the area, and end between pixels of the canvas', () => {
  const grown = snappedOut({ left: 0.2, top: -0.7, right: 10.1, bottom: 20 }, 2);
  expect(grown).toEqual({ left: 0, top: -1, right: 10.5, bottom: 20 });
});

it('what is seen of the plan reaches beyond the area by lines and halos', () => {
  const { minX, maxX } = extentOf({ scale: 0.1, x: 0, y: 0 }, { left: 0, top: 0, right: 100, bottom: 100 });
  expect(minX).toBeLessThan(-50);
  expect(maxX).toBeGreaterThan(1050);
});
