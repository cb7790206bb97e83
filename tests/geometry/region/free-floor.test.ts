import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { changesBetween } from '../../../geometry/region/free-floor.ts';

describe('what changed between two lists of obstacles', () => {
  it.each<{ name: string; before: string; after: string; changed: string }>([
    { name: 'nothing', before: 'abcdef', after: 'abcdef', changed: '' },
    { name: 'one replaced', before: 'abcdef', after: 'abXdef', changed: 'cX' },
    { name: 'one new', before: 'abcdef', after: 'abcXdef', changed: 'X' },
    { name: 'one gone', before: 'abcdef', after: 'abdef', changed: 'c' },
    { name: 'two replaced, far apart', before: 'abcdefgh', after: 'aXcdefYh', changed: 'bXgY' },
    { name: 'two replaced together, and one more', before: 'abcdefgh', after: 'aXYdeZgh', changed: 'bXcYfZ' },
    { name: 'one new and one gone', before: 'abcdefgh', after: 'aXbcdegh', changed: 'Xf' },
    { name: 'several new at the end', before: 'abc', after: 'abcXYZ', changed: 'XYZ' },
    { name: 'several gone together', before: 'abcdef', after: 'aef', changed: 'bcd' },
    { name: 'all of it', before: '', after: 'ab', changed: 'ab' },
    { name: 'one twice', before: 'a', after: 'aa', changed: 'a' },
    { name: 'one once of two', before: 'baa', after: 'ba', changed: 'a' },
  ])('$name', ({ before, after, changed }) => {
    expect(changesBetween([...before], [...after], 64)).toEqual([...changed]);
  });

  it('is too much to tell when it is more than asked for', () => {
    expect(changesBetween([...'abcdef'], [...'aXcYef'], 4)).toEqual([...'bXdY']);
    expect(changesBetween([...'abcdef'], [...'aXcYef'], 3)).toBeNull();
  });

  it('leaves out nothing: what is not among the changes stands in both lists', () => {
    const list = fc.uniqueArray(fc.integer({ min: 0, max: 12 }), { maxLength: 12 });
    fc.assert(
      fc.property(list, list, (before, after) => {
        const changed = new Set(changesBetween(before, after, 99));
        const kept = (all: readonly number[]) => all.filter((one) => !changed.has(one));
        expect(kept(before)).toEqual(kept(after));
        const inOne = [...before, ...after].filter((one) => before.includes(one) !== after.includes(one));
        for (const one of inOne) expect(changed.has(one)).toBe(true);
      }),
    );
  });
});
