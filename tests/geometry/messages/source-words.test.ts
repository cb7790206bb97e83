import { describe, expect, it } from 'vitest';
import { describeSources, profileDoubts, sourceDoubts } from '../../../geometry/messages/sources.ts';
import { PROFILES } from '../../../geometry/rules/profiles.ts';

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

  it('says what a habit or a reading of ours alone speaks for', () => {
    expect(
      sourceDoubts([
        { cite: 'A 1', mark: 'primary' },
        { cite: 'common practice, no published source', mark: 'common-practice', of: ['storage', 'garage'] },
        { cite: 'our reading: interior walls as objects', mark: 'our-reading', of: ['inside-wall'] },
      ]),
    ).toEqual([
      'Common practice, no published source: storage; garage.',
      'Our reading, no text says it: interior walls as objects.',
    ]);
  });
});

describe('describeSources(sources)', () => {
  it('names each text, then the doubts; common practice is said once', () => {
    expect(
      describeSources([
        { cite: 'A 1', mark: 'primary' },
        { cite: 'B, in a copy', mark: 'secondary' },
        { cite: 'common practice, no published source', mark: 'common-practice' },
      ]),
    ).toBe('A 1. B, in a copy. Not read in the primary text: B, in a copy. Common practice, no published source.');
  });
});

describe('profileDoubts(profile)', () => {
  // Every list presumes that something supports a detector.
  const SUPPORT = 'Our reading, no text says it: what carries it.';
  // Stairs, halls and garages are in neither state's list; nobody places a detector there.
  const ROOMS = 'Common practice, no published source: room in part.';

  // Read in full for placement.
  it('has only what is ours for Pennsylvania', () => {
    expect(doubtsOf('pennsylvania-240-310')).toEqual([ROOMS, SUPPORT]);
  });

  // 422.130(c)(2) and the closed-building list were read in copies; (a)(1)(A) names rooms that are lived in.
  it('names the rules of Illinois that were read in copies', () => {
    expect(doubtsOf('illinois-422-130')).toEqual([
      'Our reading, no text says it: room in part and what carries it.',
      ROOMS,
      'Not read in the primary text: devices that must be off and side by side.',
    ]);
  });

  it('says that nothing of the long-term list was read in the primary text', () => {
    expect(doubtsOf('health-canada-long-term')).toEqual(['Not read in the primary text: all of it.', ROOMS, SUPPORT]);
  });

  it('tells a habit of the trade from what was read elsewhere', () => {
    expect(doubtsOf('home-short-term')).toEqual([
      'Not read in the primary text: room in part and side by side.',
      'Common practice, no published source: room in part and floor drain.',
      'Our reading, no text says it: moving air in part, objects and interior walls in part, what carries it and side by side in part.',
    ]);
  });
});
