import { expect, it } from 'vitest';
import { declination } from '../../../src/platform/declination.ts';

it('magnetic north is off from true north as the World Magnetic Model 2025 says', () => {
  // Test values of the model's report (NOAA, 2024), at sea level: 2025.0.
  const at = Date.UTC(2025, 0, 1);
  expect(declination(80, 0, at)).toBeCloseTo(1.28, 1);
  expect(declination(0, 120, at)).toBeCloseTo(-0.16, 1);
  // Beyond its last year it goes on.
  expect(Math.abs(declination(41, -76, Date.UTC(2035, 0, 1)))).toBeLessThan(20);
});
