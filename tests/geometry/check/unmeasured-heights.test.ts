import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { checkDetector, checkPlan } from '../../../geometry/check/check-detector.ts';
import { withItemPatched } from '../../../geometry/edit/listed-items.ts';
import { buildLevel } from '../../../geometry/level/build-level.ts';
import { headlineOf } from '../../../geometry/messages/index.ts';
import type { Detector, Fixture, Level, PlanObject } from '../../../geometry/plan/model.ts';
import { parsePlan } from '../../../geometry/planfile/parse.ts';
import { writePlan } from '../../../geometry/planfile/write.ts';
import { compareOpinions } from '../../../geometry/recheck/compare.ts';
import { recheck } from '../../../geometry/recheck/recheck.ts';
import type { RuleId } from '../../../geometry/rules/types.ts';
import { hall, hallDetector, planUnder } from '../../helpers/hall.ts';

/** A table under the whole footprint of the detector, and a cabinet with its face 50 mm beside the rim. */
const TOP = 736.6;
const table = (change: Partial<PlanObject> = {}): PlanObject => ({
  id: 't',
  name: 'Table',
  shape: { box: { center: [0, 5000], width: 600, depth: 600, turn: 0 } },
  bottom: 0,
  top: TOP,
  ...change,
});
const cabinet = (change: Partial<PlanObject> = {}): PlanObject => ({
  id: 'c',
  name: 'Cabinet',
  shape: { box: { center: [300 + 50 + 50, 5000], width: 600, depth: 400, turn: 0 } },
  bottom: 0,
  top: 700,
  ...change,
});
const on = (objects: readonly PlanObject[], change: Partial<Detector> = {}, level: Partial<Level> = {}): Level => ({
  ...hall({ objects, ...level }),
  detectors: [{ ...hallDetector({ base: TOP }), ...change }],
});

function reportOf(level: Level, profile = 'home-short-term') {
  const [detector] = level.detectors;
  if (!detector) throw new Error('no detector');
  const plan = planUnder(profile, [level]);
  const [compared] = compareOpinions(checkPlan(plan), recheck(plan), plan.tapeTolerance);
  expect(compared?.detectors[0]?.computed).toMatchObject({ how: 'twice' });
  return checkDetector(plan, buildLevel(level), detector);
}
const rowsOf = (rule: RuleId, level: Level, profile?: string) =>
  reportOf(level, profile).checks.filter((check) => check.rule === rule);

describe('a thing whose top nobody has measured, under a detector', () => {
  it('gives it no height that counts', () => {
    const [row] = rowsOf('height-band', on([table({ topAnswered: false })]));
    expect(row).toMatchObject({ verdict: 'unknown', notRun: true, measured: null, subject: 't' });
    expect(headlineOf(reportOf(on([table({ topAnswered: false })]))).word).not.toBe('Clear');
    for (const measured of [table(), table({ topAnswered: true }), table({ bottomAnswered: false })])
      expect(rowsOf('height-band', on([measured]))[0]).toMatchObject({
        verdict: 'clear',
        notRun: false,
        measured: TOP,
      });
  });

  it('still carries it, and still blocks where even the usual height is too low', () => {
    expect(rowsOf('support', on([table({ topAnswered: false })]))[0]).toMatchObject({ verdict: 'clear', subject: 't' });
    const low = on([table({ top: 400, topAnswered: false })], { base: 400 });
    expect(rowsOf('height-band', low)[0]).toMatchObject({ verdict: 'blocked', notRun: false, measured: 400 });
  });

  it('counts for nothing where a measured one carries it, or the detector has a height of its own', () => {
    const both = on([table({ topAnswered: false }), table({ id: 't2' })]);
    expect(rowsOf('height-band', both)[0]).toMatchObject({ notRun: false, measured: TOP });
    const hung = on([table({ topAnswered: false })], { support: 'hung' });
    expect(rowsOf('height-band', hung)[0]).toMatchObject({ notRun: false, measured: TOP });
  });

  it('is measured once its height is entered, also the one that stood there, and lifts what stands on it', () => {
    const level = on([table({ topAnswered: false })]);
    const same = withItemPatched(level, 't', { top: TOP });
    expect(same.objects[0]).toEqual(table());
    expect(rowsOf('height-band', same)[0]).toMatchObject({ notRun: false });
    const lower = withItemPatched(level, 't', { top: 450 });
    expect(lower.detectors[0]?.base).toBe(450);
    expect(rowsOf('height-band', lower)[0]).toMatchObject({ verdict: 'blocked' });
    const moved = withItemPatched(level, 't', { shape: { circle: { center: [0, 5000], radius: 400 } } });
    expect(moved.objects[0]?.topAnswered).toBe(false);
  });
});

describe('a thing whose height nobody has measured, beside a detector', () => {
  it('is not below it: the rule is not run where the thing would be too near', () => {
    const rows = (change: Partial<PlanObject>) => rowsOf('object', on([table(), cabinet(change)]));
    expect(rows({}).every(({ verdict }) => verdict === 'clear')).toBe(true);
    expect(rows({ topAnswered: false })).toContainEqual(
      expect.objectContaining({ verdict: 'unknown', notRun: true, subject: 'c' }),
    );
    const far = { center: [300 + 50 + 102, 5000], width: 600, depth: 400, turn: 0 } as const;
    expect(rows({ topAnswered: false, shape: { box: far } }).every(({ notRun }) => !notRun)).toBe(true);
    // By its default height it reaches the detector too: blocked as usual.
    expect(rows({ topAnswered: false, top: 900 })).toContainEqual(
      expect.objectContaining({ verdict: 'blocked', notRun: false, subject: 'c' }),
    );
  });

  it('is not above it either', () => {
    const shelf = (change: Partial<PlanObject>) => cabinet({ bottom: 1200, top: 1230, ...change });
    const rows = (change: Partial<PlanObject>) => rowsOf('object', on([table(), shelf(change)]));
    expect(rows({}).every(({ notRun }) => !notRun)).toBe(true);
    expect(rows({ bottomAnswered: false })).toContainEqual(expect.objectContaining({ notRun: true, subject: 'c' }));
  });

  it('counts of fixtures that no other rule names as well', () => {
    const fan: Fixture = { ...cabinet({ topAnswered: false }), id: 'f', kind: 'portable-fan', name: '', stream: null };
    const level = on([table()], {}, { fixtures: [fan] });
    expect(rowsOf('object', level, 'pennsylvania-240-310')).toContainEqual(
      expect.objectContaining({ notRun: true, subject: 'f' }),
    );
    expect(rowsOf('object', level).every(({ notRun }) => !notRun)).toBe(true);
  });

  it('never makes clear what any height of it would block, and the second computation agrees', () => {
    fc.assert(
      fc.property(
        fc.constantFrom('home-short-term', 'pennsylvania-240-310', 'health-canada-long-term'),
        fc.integer({ min: 300, max: 1700 }),
        fc.integer({ min: -200, max: 800 }),
        fc.integer({ min: 100, max: 1800 }),
        fc.integer({ min: 100, max: 1800 }),
        (profile, base, x, top, real) => {
          // An object that supports the detector is never beside it.
          fc.pre(Math.abs(top - base) > 3 && Math.abs(real - base) > 3);
          const shape = { box: { center: [x, 5000], width: 300, depth: 300, turn: 0 } } as const;
          const level = (height: number, topAnswered: boolean) =>
            on([cabinet({ shape, top: height, topAnswered })], { base, support: null });
          const rows = rowsOf('object', level(top, false), profile);
          if (rows.some(({ notRun, verdict }) => notRun || verdict === 'blocked')) return;
          const measured = rowsOf('object', level(real, true), profile);
          expect(measured.every(({ verdict }) => verdict !== 'blocked')).toBe(true);
        },
      ),
    );
  });
});

describe('the marks', () => {
  it('come back from a file', () => {
    const level = on([table({ topAnswered: false, bottomAnswered: false })]);
    const read = parsePlan(writePlan(planUnder('home-short-term', [level])));
    expect(read.ok && read.plan.levels[0]?.objects).toEqual(level.objects);
  });
});
