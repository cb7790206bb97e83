import { describe, expect, it } from 'vitest';
import { PROFILES } from '../../../geometry/index.ts';
import { profileDoubts, sourceDoubts, sourceWords } from '../../../geometry/words/sources.ts';

const doubtsOf = (id: string) => PROFILES.filter((one) => one.id === id).flatMap((one) => profileDoubts(one));

describe('sourceDoubts(sources)', () => {
  it('has none where all was read in the primary text', () => {
    expect(sourceDoubts([{ cite: 'A 1', mark: 'primary' }])).toEqual([]);
  });

  it('names what was read elsewhere, and says once that no source is published', () => {
    expect(
      sourceDoubts([
        { cite: 'A 1', mark: 'primary' },
        { cite: 'B, in a copy', mark: 'secondary' },
        { cite: 'common practice, no published source', mark: 'common-practice' },
      ]),
    ).toEqual(['Not read in the primary text: B, in a copy.', 'Common practice, no published source.']);
  });
});

describe('sourceWords(sources)', () => {
  it('names each text, then the doubts; common practice is said once', () => {
    expect(
      sourceWords([
        { cite: 'A 1', mark: 'primary' },
        { cite: 'B, in a copy', mark: 'secondary' },
        { cite: 'common practice, no published source', mark: 'common-practice' },
      ]),
    ).toBe('A 1. B, in a copy. Not read in the primary text: B, in a copy. Common practice, no published source.');
  });
});

describe('profileDoubts(profile)', () => {
  // That something has to carry a detector is taken for granted by every list.
  const SUPPORT = 'Our reading, no text says it: support.';

  // Read in full for placement.
  it('has none but our reading for Pennsylvania', () => expect(doubtsOf('pennsylvania-240-310')).toEqual([SUPPORT]));

  // 422.130(c)(2) and the closed-building list were read in copies.
  it('names the rules of Illinois that were read in copies', () => {
    expect(doubtsOf('illinois-422-130')).toEqual([
      'Not read in the primary text: machines that have to be off and side by side.',
      SUPPORT,
    ]);
  });

  it('says that nothing of the long-term list was read in the primary text', () => {
    expect(doubtsOf('health-canada-long-term')).toEqual(['Not read in the primary text: all of it.', SUPPORT]);
  });

  it('tells a habit of the trade from what was read elsewhere', () => {
    expect(doubtsOf('home-short-term')).toEqual([
      'Common practice, no published source: floor drain.',
      SUPPORT,
      'Not read in the primary text: side by side.',
    ]);
  });
});
