import { expect, it } from 'vitest';
import { isLongRun, someOf } from './how-many.ts';

it.skipIf(isLongRun).each([
  [[0, 1, 2, 3, 4, 5], 3, [0, 2, 4]],
  [[0, 1, 2], 1, [0]],
  [[0, 1, 2], 2, [0, 2]],
  [[0, 1, 2, 3, 4, 5, 6, 7], 3, [0, 3, 6]],
  [[0, 1], 2, [0, 1]],
  [[0, 1], 5, [0, 1]],
  [[], 2, []],
])('of %j takes %i evenly spaced cases, the first among them', (all, count, some) => {
  expect(someOf(all, count)).toEqual(some);
});

it('takes as many as it is asked for, of any number of cases', () => {
  for (let length = 1; length < 40; length++)
    for (let count = 1; count <= length; count++)
      expect(
        someOf(
          Array.from({ length }, (_, i) => i),
          count,
        ),
      ).toHaveLength(isLongRun ? length : count);
});
