import { describe, expect, it } from 'vitest';
import { distance } from '../../../../geometry/plane/point.ts';
import { discsApart } from '../../../../src/drawing/discs-apart.ts';
import { BEYOND_PX, SYMBOL_PX } from '../../../../src/editor/paint/detectors.ts';
import { LINE_PX } from '../../../../src/theme/tokens.ts';

/** Two detectors 3 in across, 4 in from rim to rim: as near as side by side may be. */
const RADIUS = 38.1;
const BETWEEN = 2 * RADIUS + 101.6;

describe('the symbols of two detectors side by side', () => {
  const scales = Array.from({ length: 60 }, (_, step) => 0.002 * 1.17 ** step);

  it('lie apart on the screen at every zoom, with bare paper between the ring of a chosen one and the sign of the other', () => {
    expect(scales.at(-1)).toBeGreaterThan(15);
    for (const scale of scales) {
      const places = [0, BETWEEN].map((x) => ({ at: [x * scale, 0] as const, radius: RADIUS * scale }));
      const [a, b] = discsApart(places, SYMBOL_PX);
      if (!a || !b) throw new Error('two discs');
      const ring = a.radius + BEYOND_PX.ring + LINE_PX.detector / 2;
      const sign = b.radius + BEYOND_PX.sign;
      expect(distance(a.at, b.at) - ring - sign, `${scale} px for a mm`).toBeGreaterThanOrEqual(1);
    }
  });

  it('have the ring of a chosen one clear of its own sign', () => {
    expect(BEYOND_PX.ring - LINE_PX.detector / 2 - BEYOND_PX.sign).toBeGreaterThanOrEqual(1);
  });
});
