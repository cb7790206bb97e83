import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fullTurn } from '../../../geometry/plane/bearing.ts';
import { northBySun, wallDirections } from '../../../geometry/sun/north-by-sun.ts';
import { sunPosition } from '../../../geometry/sun/position.ts';

/** Approximately Minneapolis. */
const PLACE = [44.95, -93.2] as const;
const at = (text: string) => Date.parse(text);

describe('northBySun', () => {
  it('at solar noon the sun is in the south: north is straight away from it', () => {
    // The sun's azimuth there is 180° at about 13:10 daylight time in early October.
    const noon = at('2026-10-05T13:01:00-05:00');
    expect(sunPosition(noon, ...PLACE).azimuth).toBeCloseTo(180, -0.5);
    const found = northBySun(180, noon, ...PLACE);
    if (!found.ok) throw new Error(found.why);
    expect(Math.min(found.north, 360 - found.north)).toBeLessThan(1);
  });

  it('gives back the north that the direction was made from', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 359 }), fc.integer({ min: 0, max: 600 }), (north, minutes) => {
        const instant = at('2026-10-05T08:00:00-05:00') + minutes * 60_000;
        const { azimuth } = sunPosition(instant, ...PLACE);
        const found = northBySun(fullTurn(north + azimuth), instant, ...PLACE);
        if (found.ok) expect(Math.abs(((found.north - north + 540) % 360) - 180)).toBeLessThan(1e-6);
      }),
    );
  });

  it('refuses a sun that is down, and one that is too high for a shadow', () => {
    expect(northBySun(0, at('2026-10-05T23:00:00-05:00'), ...PLACE)).toMatchObject({ ok: false, why: 'low' });
    expect(northBySun(0, at('2026-06-21T13:15:00-05:00'), ...PLACE)).toMatchObject({ ok: false, why: 'high' });
  });
});

it('wallDirections names each way along the walls once', () => {
  expect(
    wallDirections([
      { from: [0, 0], to: [8000, 0] },
      { from: [8000, 0], to: [8000, 6000] },
      { from: [8000, 6000], to: [0, 6010] },
      { from: [0, 0], to: [0, 900] },
      { from: [0, 0], to: [3000, 3000] },
    ]),
  ).toEqual([0, 90, 135, 180, 270, 315]);
});
