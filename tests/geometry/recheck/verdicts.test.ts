import { describe, expect, it } from 'vitest';
import type { Detector, Level, Plan } from '../../../geometry/plan/model.ts';
import { recheck } from '../../../geometry/recheck/recheck.ts';
import { fixtureAt, hall, hallDetector, planUnder, RADIUS } from '../../helpers/hall.ts';

/* The verdicts of the second computation by themselves: compared with the first, a fault that both have would not be seen. */

function rowsOf(rule: string, level: Level, detector: Partial<Detector> = {}, plan: Partial<Plan> = {}) {
  const opinion = recheck(planUnder('home-short-term', [{ ...level, detectors: [hallDetector(detector)] }], plan));
  if (!opinion.ok) throw new Error(opinion.cause);
  return opinion.levels[0]?.detectors[0]?.checks.filter((row) => row.rule === rule) ?? [];
}

const SUMP = 2133.6; // 84 in

describe('the second computation: verdicts', () => {
  const pit = hall({ fixtures: [fixtureAt('sump-pit')] });
  it.each([
    [SUMP - 1, 'blocked'],
    [SUMP - 0.101, 'blocked'],
    [SUMP - 0.1, 'tight'],
    [SUMP, 'tight'],
    [SUMP + 25.3, 'tight'],
    [SUMP + 25.4, 'clear'],
    [SUMP + 900, 'clear'],
  ] as const)('a pit %s mm away is %s', (apart, verdict) => {
    expect(rowsOf('sump', pit, { at: [apart + RADIUS, 5000] })).toMatchObject([
      { subject: 'f', verdict, notRun: false },
    ]);
  });

  it.each([
    ['in it, at its height', { at: [-100, 5000] }, 2000, 'blocked'],
    ['the rim a mm within it', { at: [RADIUS - 1, 5000] }, 2000, 'blocked'],
    ['over it', { at: [-100, 5000] }, 900, 'clear'],
    ['less than 4 in below it', { at: [-100, 5000], base: 600 }, 900, 'blocked'],
  ] as const)('an object, %s: %s', (_, detector, top, verdict) => {
    const shape = { box: { center: [-100, 5000], width: 200, depth: 200, turn: 0 } } as const;
    const bottom = verdict === 'blocked' && top === 900 ? 700 : 0;
    const level = hall({ objects: [{ id: 't', name: '', shape, bottom, top }] });
    const verdicts = rowsOf('object', level, detector, { tapeTolerance: 0 })
      .filter(({ subject }) => subject === 't')
      .map((row) => row.verdict);
    expect(verdicts.length > 0 ? verdicts : ['clear']).toEqual([verdict]);
  });

  it.each([
    [508, 'clear'],
    [507.9, 'tight'],
    [507.89, 'blocked'],
    [1828.8 - 25, 'clear'],
    [1828.9 - 25, 'tight'],
    [1828.91 - 25, 'blocked'],
  ] as const)('a base at %s mm is %s', (base, verdict) => {
    const rows = rowsOf('height-band', hall(), { base }, { tapeTolerance: 0 });
    const worst = ['blocked', 'tight', 'clear'].find((one) => rows.some((row) => row.verdict === one));
    expect(worst).toBe(verdict);
  });

  it.each([
    ['both answered', {}, {}, false],
    ['why it is tested is not', { purposeAnswered: false }, {}, true],
    ['who lives there is not', {}, { livingAnswered: false }, true],
  ] as const)('the level, %s', (_, site, living, notRun) => {
    const plan = planUnder('home-short-term', []);
    expect(rowsOf('level', hall(living), {}, { site: { ...plan.site, ...site } })).toMatchObject([
      { verdict: notRun ? 'unknown' : 'clear', notRun },
    ]);
  });

  it('what is not drawn is not run, and clear once it was looked for', () => {
    expect(rowsOf('sump', hall())).toMatchObject([{ verdict: 'unknown', notRun: true }]);
    expect(rowsOf('sump', hall({ lookedFor: ['sump'] }))).toMatchObject([{ verdict: 'clear', notRun: false }]);
  });
});
