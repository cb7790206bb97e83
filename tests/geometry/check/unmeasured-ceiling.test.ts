import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { checkDetector, checkPlan } from '../../../geometry/check/check-detector.ts';
import { withCeiling } from '../../../geometry/edit/index.ts';
import { buildLevel } from '../../../geometry/level/build-level.ts';
import { headlineOf } from '../../../geometry/messages/index.ts';
import type { Level } from '../../../geometry/plan/model.ts';
import { parsePlan } from '../../../geometry/planfile/parse.ts';
import { writePlan } from '../../../geometry/planfile/write.ts';
import { compareOpinions } from '../../../geometry/recheck/compare.ts';
import { recheck } from '../../../geometry/recheck/recheck.ts';
import { hall, hallDetector, planUnder } from '../../helpers/hall.ts';

const TALL = 25.4;
/** 5 ft, the lowest possible ceiling: common practice, no published source. */
const LOWEST = 1524;
/** 25 Pa. Code 240.310(a): 12 in below the ceiling. */
const LEAST = 304.8;

const levelWith = (change: Partial<Level>, base: number): Level => ({
  ...hall({ ceiling: 2286, ...change }),
  detectors: [{ ...hallDetector(), base, tall: TALL }],
});

function reportOf(level: Level, profile = 'home-short-term') {
  const [detector] = level.detectors;
  if (!detector) throw new Error('no detector');
  return checkDetector(planUnder(profile, [level]), buildLevel(level), detector);
}
const rowOf = (level: Level, profile?: string) =>
  reportOf(level, profile).checks.find(({ rule }) => rule === 'ceiling');

describe('the ceiling that nobody has measured', () => {
  it.each([
    { base: 762, row: { verdict: 'clear', notRun: false, measured: null } },
    { base: LOWEST - LEAST - TALL, row: { verdict: 'clear', notRun: false, measured: null } },
    { base: LOWEST - LEAST - TALL + 0.2, row: { verdict: 'unknown', notRun: true, measured: null } },
    { base: 1778, row: { verdict: 'unknown', notRun: true, measured: null } },
    // Blocked even under the default ceiling of a new level.
    { base: 2286 - LEAST, row: { verdict: 'blocked', notRun: false, measured: expect.closeTo(LEAST - TALL, 9) } },
  ])('with the base at $base mm: $row.verdict', ({ base, row }) => {
    expect(rowOf(levelWith({ ceilingAnswered: false }, base))).toMatchObject(row);
    // Measured, or in a file without that key: the distance counts as usual.
    expect(rowOf(levelWith({}, base))?.measured).toBeCloseTo(2286 - base - TALL, 9);
    expect(rowOf(levelWith({ ceilingAnswered: true }, base))).toEqual(rowOf(levelWith({}, base)));
  });

  it('is never better than under the height that the level has: tight there is not run', () => {
    // A margin of 10 mm, less than the tape tolerance of 1 in.
    const low = levelWith({ ceiling: 1400, ceilingAnswered: false }, 1400 - LEAST - TALL - 10);
    expect(rowOf({ ...low, ceilingAnswered: true })?.verdict).toBe('tight');
    expect(rowOf(low)).toMatchObject({ verdict: 'unknown', notRun: true, reason: 'The ceiling is not measured.' });
    const plan = planUnder('home-short-term', [low]);
    const [compared] = compareOpinions(checkPlan(plan), recheck(plan), plan.tapeTolerance);
    expect(compared?.detectors[0]?.computed).toMatchObject({ how: 'twice' });
  });

  it('never gives a bare "Clear" to a detector that could be too near to it', () => {
    expect(headlineOf(reportOf(levelWith({ ceilingAnswered: false }, 1700))).word).not.toBe('Clear');
  });

  it('is never better than under any ceiling from 5 ft up, and the second computation agrees', () => {
    fc.assert(
      fc.property(
        fc.constantFrom('home-short-term', 'pennsylvania-240-310', 'health-canada-long-term'),
        // Integers, because most doubles from zero on are tiny.
        fc.integer({ min: 0, max: 2250 }),
        fc.integer({ min: LOWEST, max: 3000 }),
        (profile, base, real) => {
          const level = levelWith({ ceilingAnswered: false }, base);
          const row = rowOf(level, profile);
          if (row?.verdict === 'clear') {
            expect(rowOf(levelWith({ ceiling: real }, base), profile)?.verdict).not.toBe('blocked');
          }
          const plan = planUnder(profile, [level]);
          const [compared] = compareOpinions(checkPlan(plan), recheck(plan), plan.tapeTolerance);
          expect(compared?.detectors[0]?.computed).toMatchObject({ how: 'twice' });
        },
      ),
    );
  });

  it('is measured once a height is entered, also the one that stood there', () => {
    const plan = planUnder('home-short-term', [levelWith({ ceilingAnswered: false }, 1700)]);
    const [level] = plan.levels;
    const measured = withCeiling(plan, level?.id ?? '', 2286);
    expect(measured.levels[0]).not.toHaveProperty('ceilingAnswered');
    expect(rowOf(measured.levels[0] as Level)?.verdict).toBe('clear');
  });

  it('comes back from a file', () => {
    const plan = planUnder('home-short-term', [levelWith({ ceilingAnswered: false }, 1700)]);
    const read = parsePlan(writePlan(plan));
    expect(read.ok && read.plan.levels[0]?.ceilingAnswered).toBe(false);
  });
});
