import { describe, expect, it } from 'vitest';
import { readLength } from '../../../src/quick-card/read-length.ts';

describe('readLength(text, unit)', () => {
  it.each([
    ['0', 'feet-inches', '"0" is too short. Write a length from 1 in to 328 ft.'],
    ['-4 ft', 'feet-inches', '"-4 ft" is too short. Write a length from 1 in to 328 ft.'],
    ['5000', 'feet-inches', '"5000" is too long. Write a length from 1 in to 328 ft.'],
    ['329', 'feet-inches', '"329" is too long. Write a length from 1 in to 328 ft.'],
    ['0', 'metric', '"0" is too short. Write a length from 1 cm to 100 m.'],
    ['5000', 'metric', '"5000" is too long. Write a length from 1 cm to 100 m.'],
  ] as const)('says of %j in %s what is wrong, and the range', (text, unit, message) => {
    expect(readLength(text, unit)).toEqual({ ok: false, message });
  });

  it('takes both ends of the range as they are said', () => {
    expect(readLength('1 in', 'feet-inches')).toMatchObject({ ok: true, mm: 25.4 });
    expect(readLength('328', 'feet-inches')).toMatchObject({ ok: true, mm: 99_974.4 });
    expect(readLength('1 cm', 'metric')).toMatchObject({ ok: true, mm: 10 });
    expect(readLength('100', 'metric')).toMatchObject({ ok: true, mm: 100_000 });
  });

  it.each([
    ['wide', 'metric', /^"wide" is not a length\. .* It has to be from 1 cm to 100 m\.$/],
    ['99999', 'feet-inches', /^"99999" is longer than 10 km\. .* It has to be from 1 in to 328 ft\.$/],
  ] as const)('says the range also of %j, which is no length of a plan', (text, unit, message) => {
    expect(readLength(text, unit)).toMatchObject({ ok: false, message: expect.stringMatching(message) });
  });
});
