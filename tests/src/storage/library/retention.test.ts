import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  type Dated,
  isVersionDue,
  MOST_VERSIONS,
  outdatedVersions,
} from '../../../../src/storage/library/retention.ts';

const MINUTE = 60_000;
const HOUR = 60 * MINUTE;
const DAY = 24 * HOUR;
const NOW = Date.UTC(2026, 10, 25, 12, 30);

/** Versions by their age, newest first. */
const aged = (...ages: number[]): readonly Dated[] => ages.map((age) => ({ at: NOW - age, marked: false }));
const kept = (versions: readonly Dated[]): readonly Dated[] => {
  const gone = new Set(outdatedVersions(versions, NOW));
  return versions.filter((version) => !gone.has(version));
};
const versionsArb = fc.uniqueArray(
  fc.record({ at: fc.integer({ min: NOW - 400 * DAY, max: NOW }), marked: fc.boolean() }),
  { selector: ({ at }) => at, maxLength: 150 },
);

describe('which versions make way', () => {
  it.each([
    ['none of the last hour', aged(0, MINUTE, 2 * MINUTE, 59 * MINUTE), 4],
    // 12:30 less 90 to 149 min: 11:00 down to 10:01, two hours of the clock.
    ['all but the newest of an hour', aged(0, 90 * MINUTE, 100 * MINUTE, 149 * MINUTE, 2 * DAY), 4],
    ['all but the newest of a day', aged(0, 3 * DAY, 3 * DAY + HOUR, 3 * DAY + 2 * HOUR, 9 * DAY), 3],
    ['none where there is one', aged(300 * DAY), 1],
  ])('%s', (_, versions, count) => {
    expect(kept(versions)).toHaveLength(count);
  });

  it('never a marked one within thirty days', () => {
    const marked = [2 * DAY, 2 * DAY + MINUTE, 2 * DAY + 2 * MINUTE].map((age) => ({ at: NOW - age, marked: true }));
    expect(outdatedVersions(marked, NOW)).toEqual([]);
  });

  it('never the oldest, never more than the most that are kept, and each once', () => {
    fc.assert(
      fc.property(versionsArb, (versions) => {
        const left = kept(versions);
        const oldest = Math.min(...versions.map(({ at }) => at));
        if (versions.length > 0) expect(left.some(({ at }) => at === oldest)).toBe(true);
        expect(left.length).toBeLessThanOrEqual(MOST_VERSIONS);
        expect(left.length + outdatedVersions(versions, NOW).length).toBe(versions.length);
      }),
    );
  });

  it('is settled in one go: of what was kept nothing goes at the same time', () => {
    fc.assert(
      fc.property(versionsArb, (versions) => {
        expect(outdatedVersions(kept(versions), NOW)).toEqual([]);
      }),
    );
  });

  it('keeps something near every time in the last thirty days at which there was something', () => {
    fc.assert(
      fc.property(
        versionsArb.filter((all) => all.length < MOST_VERSIONS - 2),
        (versions) => {
          const left = kept(versions);
          for (const { at } of versions.filter((version) => NOW - version.at < 30 * DAY)) {
            const within = NOW - at < DAY ? HOUR : DAY;
            expect(left.some((version) => Math.abs(version.at - at) < within)).toBe(true);
          }
        },
      ),
    );
  });
});

describe('whether a state is kept before it is replaced', () => {
  it.each([
    ['after a rest of a minute', MINUTE, Number.POSITIVE_INFINITY, true],
    ['not while the hand goes on', 2000, 10_000, false],
    ['when three minutes of drawing have gone by', 500, 3 * MINUTE, true],
    ['not twice', MINUTE, 0, false],
  ])('%s', (_, rested, sinceVersion, due) => {
    const savedAt = NOW - rested;
    expect(isVersionDue(NOW, savedAt, Math.max(0, savedAt - sinceVersion))).toBe(due);
  });
});
