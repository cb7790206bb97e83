import fc from 'fast-check';
import { expect, it } from 'vitest';
import { evenly } from './evenly.ts';

it('covers the whole stretch, and includes both ends', () => {
  const drawn = fc.sample(evenly(-90, 270), { numRuns: 4000, seed: 1 });
  const tenths = Array.from({ length: 10 }, (_, i) => drawn.filter((n) => Math.floor((n + 90) / 36) === i).length);
  expect(Math.min(...tenths)).toBeGreaterThan(200);
  expect(drawn.every((n) => n >= -90 && n <= 270)).toBe(true);
  expect(drawn).toContain(-90);
  expect(drawn).toContain(270);
});
