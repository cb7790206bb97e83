import fc from 'fast-check';
import { expect, it } from 'vitest';
import { numbersOfText, textOfNumbers } from '../../../../src/platform/places/numbers-text.ts';

it('whole numbers come back from their text, small differences in one letter each', () => {
  fc.assert(
    fc.property(fc.array(fc.integer({ min: -100_000, max: 100_000 })), (numbers) => {
      expect(numbersOfText(textOfNumbers(numbers))).toEqual(numbers);
    }),
  );
  expect(textOfNumbers([3, 4, 5, 4])).toHaveLength(4);
});
