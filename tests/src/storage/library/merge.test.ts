import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fateOf, type Known } from '../../../../src/storage/library/merge.ts';

const known = (id: string, hash: string, earlier: readonly string[] = [], binned = false): Known => ({
  id,
  hash,
  earlier: new Set(earlier),
  binned,
});

describe('a plan of a shelf file', () => {
  it.each([
    ['is new where nothing like it is', known('p', 'A'), [known('q', 'B')], { fate: 'new' }],
    ['is recognized by its id and text', known('p', 'A'), [known('p', 'A')], { fate: 'same', id: 'p' }],
    ['is recognized by its text alone', known('p', 'A'), [known('q', 'A')], { fate: 'same', id: 'q' }],
    [
      'that has been drawn on since is left as it is',
      known('p', 'A'),
      [known('p', 'B', ['A'])],
      { fate: 'same', id: 'p' },
    ],
    ['that was drawn on elsewhere goes on', known('p', 'B', ['A']), [known('p', 'A')], { fate: 'newer', id: 'p' }],
    [
      'that went another way stands beside',
      known('p', 'B', ['O']),
      [known('p', 'C', ['O'])],
      { fate: 'beside', id: 'p' },
    ],
    ['comes out of the bin', known('p', 'A'), [known('p', 'A', [], true)], { fate: 'from-bin', id: 'p' }],
    ['of a bin stays there', known('p', 'A', [], true), [known('p', 'A', [], true)], { fate: 'same', id: 'p' }],
  ] as const)('%s', (_, incoming, here, fate) => {
    expect(fateOf(incoming, here)).toEqual(fate);
  });

  it('never takes the place of a state that the file does not know', () => {
    const text = fc.constantFrom('A', 'B', 'C', 'D');
    const plan = fc
      .record({ id: fc.constantFrom('p', 'q', 'r'), hash: text, earlier: fc.array(text), binned: fc.boolean() })
      .map(({ id, hash, earlier, binned }) => known(id, hash, earlier, binned));
    fc.assert(
      fc.property(plan, fc.uniqueArray(plan, { selector: ({ id }) => id }), (incoming, here) => {
        const fate = fateOf(incoming, here);
        if (fate.fate !== 'newer') return;
        const replaced = here.find(({ id }) => id === fate.id);
        expect(replaced && incoming.earlier.has(replaced.hash)).toBe(true);
      }),
    );
  });

  it('is recognized when it is taken in a second time', () => {
    const text = fc.constantFrom('A', 'B', 'C');
    fc.assert(
      fc.property(text, text, (mine, theirs) => {
        const here = [known('p', mine)];
        const incoming = known('p', theirs);
        const first = fateOf(incoming, here);
        const after = first.fate === 'beside' ? [...here, known('other', theirs)] : here;
        expect(fateOf(incoming, after).fate).toBe('same');
      }),
    );
  });
});
