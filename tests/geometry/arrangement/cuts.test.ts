import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { Cuts } from '../../../geometry/arrangement/cuts.ts';
import { evenly } from '../../helpers/evenly.ts';

/** Returns the cuts as they are read back, per piece. */
function read(cuts: Cuts, pieces: number): number[][] {
  return Array.from({ length: pieces }, (_, i) => {
    const own: number[] = [];
    for (let k = cuts.start(i); k < cuts.end(i); k++) own.push(cuts.at(k));
    return own;
  });
}

describe('cuts of pieces', () => {
  it('come back sorted, each with its piece; also from memory that was used before', () => {
    const cuts = new Cuts();
    const lists = fc.array(fc.array(evenly(0, 1), { maxLength: 40 }), { maxLength: 40 });
    fc.assert(
      fc.property(lists, (wanted) => {
        cuts.clear();
        // Added in rounds over all pieces, not piece by piece.
        for (let round = 0; round < 40; round++) {
          wanted.forEach((own, piece) => {
            const parameter = own[round];
            if (parameter !== undefined) cuts.add(piece, parameter);
          });
        }
        cuts.sort(wanted.length);
        expect(read(cuts, wanted.length)).toEqual(wanted.map((own) => [...own].sort((a, b) => a - b)));
      }),
    );
  });
});
