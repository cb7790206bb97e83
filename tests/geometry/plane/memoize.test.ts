import fc from 'fast-check';
import { expect, it } from 'vitest';
import { sameIfUnchanged } from '../../../geometry/plane/memoize.ts';

it('keeps the list before where the one after has the same items, and no other', () => {
  const lists = fc.array(fc.integer({ min: 0, max: 1 }), { maxLength: 4 });
  fc.assert(
    fc.property(lists, lists, (before, after) => {
      const isSame = before.length === after.length && before.every((item, index) => item === after[index]);
      expect(sameIfUnchanged(before, after)).toBe(isSame ? before : after);
    }),
  );
});
