import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { barParts, drawingScales, fittingScale } from '../../../src/report/scale.ts';
import { evenly } from '../../helpers/evenly.ts';

describe('fittingScale(width, height, room, unit)', () => {
  it.each([
    // 36 ft are 10972.8 mm: at 3/16 in to the foot 6 3/4 in = 171.45 mm.
    { width: 10972.8, room: 171.45, unit: 'feet-inches', words: '3/16 in = 1 ft' },
    { width: 10972.8, room: 171.4, unit: 'feet-inches', words: '1/8 in = 1 ft' },
    { width: 9300, room: 186, unit: 'metric', words: '1:50' },
    { width: 9300, room: 185.9, unit: 'metric', words: '1:75' },
  ] as const)('$width mm on $room mm of paper: $words', ({ width, room, unit, words }) => {
    expect(fittingScale(width, 10, { width: room, height: 100 }, unit).words).toBe(words);
  });

  it('always fits, and the next larger scale would not', () => {
    const length = evenly(500, 5e6);
    fc.assert(
      fc.property(length, length, fc.constantFrom('metric' as const, 'feet-inches' as const), (width, height, unit) => {
        const room = { width: 180, height: 150 };
        const { ratio } = fittingScale(width, height, room, unit);
        expect(width / ratio).toBeLessThanOrEqual(room.width);
        expect(height / ratio).toBeLessThanOrEqual(room.height);
        const larger = drawingScales(unit).filter((scale) => scale.ratio < ratio);
        for (const scale of larger) {
          expect(width / scale.ratio > room.width || height / scale.ratio > room.height).toBe(true);
        }
      }),
    );
  });

  it('says for each scale of the list how many inches or feet stand for a foot or an inch', () => {
    for (const { ratio, words } of drawingScales('feet-inches')) {
      const found = /^(\d+)(?:\/(\d+))? in = (\d+) ft$/.exec(words);
      const [inches = 0, under = 1, feet = 0] = (found ?? []).slice(1).map((part) => Number(part ?? 1));
      expect((feet * 12) / (inches / under)).toBe(ratio);
    }
  });
});

describe('barParts(scale, width, unit)', () => {
  it('has four parts of a round length that fit', () => {
    expect(barParts({ ratio: 48, words: '' }, 70, 'feet-inches')).toEqual({
      part: 609.6,
      labels: ['0', '2', '4', '6', '8 ft'],
    });
    expect(barParts({ ratio: 75, words: '' }, 70, 'metric')).toEqual({
      part: 1000,
      labels: ['0', '1', '2', '3', '4 m'],
    });
  });
});
