import { describe, expect, it } from 'vitest';
import { checkPlan } from '../../../geometry/check/check-detector.ts';
import type { Detector, Level, Opening, Plan, Wall, XY } from '../../../geometry/plan/model.ts';
import { recheck } from '../../../geometry/recheck/recheck.ts';
import { fixtureAt, hall, hallDetector, planUnder, RADIUS } from '../../helpers/hall.ts';
import { boxWalls, levelOf } from '../../helpers/level-of.ts';

/* The verdicts of the second computation alone: comparing it with the first does not show a fault that both have. */

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
    // The hall is 20 m between its walls: the rim may reach 0.1 mm into one.
    [10_000 - RADIUS, 'clear'],
    [10_000 - RADIUS + 0.09, 'clear'],
    [10_000 - RADIUS + 0.11, 'blocked'],
    [10_000 - 0.01, 'blocked'],
    [10_000 + 50, 'blocked'],
  ] as const)('a detector at %s mm from the middle is %s in its room', (y, verdict) => {
    expect(rowsOf('room-use', hall(), { at: [0, y] })).toMatchObject([{ verdict, notRun: false }]);
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

  it('each level on the ground waits for who lives there, not for why it is tested', () => {
    const onGround = (living: Partial<Level>, site: Partial<Plan['site']>) => {
      const plan = planUnder('pennsylvania-240-310', []);
      const level = { ...hall({ living: 'lived-in', ground: 'basement', ...living }), detectors: [hallDetector()] };
      const opinion = recheck({ ...plan, levels: [level], site: { ...plan.site, ...site } });
      if (!opinion.ok) throw new Error(opinion.cause);
      return opinion.levels[0]?.detectors[0]?.checks.find(({ rule }) => rule === 'level');
    };
    expect(onGround({}, { purposeAnswered: false })).toMatchObject({ verdict: 'clear', notRun: false });
    expect(onGround({ livingAnswered: false }, {})).toMatchObject({ verdict: 'unknown', notRun: true });
  });

  it('the level does not wait for who lives on a level above', () => {
    const lowest = { ...hall({ living: 'lived-in' }), detectors: [hallDetector()] };
    const above = { ...hall({ livingAnswered: false }), id: 'above', order: 1 };
    const opinion = recheck(planUnder('home-short-term', [lowest, above]));
    if (!opinion.ok) throw new Error(opinion.cause);
    const row = opinion.levels[0]?.detectors[0]?.checks.find(({ rule }) => rule === 'level');
    expect(row).toMatchObject({ verdict: 'clear', notRun: false });
  });

  // Health Canada requires a spot away from heat and openings, without a figure.
  it('a rule without a figure lets a detector stand beside, and asks a person where something is drawn', () => {
    const under = (level: Level, rule: string) => {
      const opinion = recheck(planUnder('health-canada-long-term', [{ ...level, detectors: [hallDetector()] }]));
      if (!opinion.ok) throw new Error(opinion.cause);
      return opinion.levels[0]?.detectors[0]?.checks.filter((row) => row.rule === rule) ?? [];
    };
    expect(under(hall({ openings: [] }), 'outside-opening').filter(({ notRun }) => !notRun)).toEqual([]);
    expect(under(hall(), 'outside-opening')).toMatchObject([{ verdict: 'unknown', notRun: true }]);
    const beside = fixtureAt('furnace', {
      shape: { circle: { center: [-RADIUS - 100.5, 5000], radius: 100 } },
      top: 1500,
    });
    expect(under(hall({ fixtures: [beside] }), 'heat').filter(({ verdict }) => verdict === 'blocked')).toEqual([]);
  });

  it('what is not drawn is not run, and clear once it was looked for', () => {
    expect(rowsOf('sump', hall())).toMatchObject([{ verdict: 'unknown', notRun: true }]);
    expect(rowsOf('sump', hall({ lookedFor: ['sump'] }))).toMatchObject([{ verdict: 'clear', notRun: false }]);
  });
});

describe('the second computation: walls that coincide', () => {
  const outer = boxWalls(0, 0, 20_000, 20_000);
  const drawn = (id: string, from: XY, to: XY, thickness: number, side: Wall['side'] = 'auto'): Wall => ({
    ...{ id, from, to, thickness, side },
  });
  const nearest = (rule: string, level: Level, at: XY) =>
    Math.min(...rowsOf(rule, level, { at }).map(({ measured }) => measured ?? Number.POSITIVE_INFINITY));

  it.each([
    // A wall half an inch aside counts as the same wall: its window is as deep as the thicker wall.
    [12.7, 3000 - 200 - RADIUS],
    [12.8, 3000 - 50 - RADIUS],
  ])('a window in a wall with a lining %d mm aside', (aside, measured) => {
    const window: Opening = { id: 'o', wall: 'w1', kind: 'window', offset: 8000, width: 1000, bottom: 900, top: 2000 };
    const walls = [...outer, drawn('lining', [4000, aside], [16_000, aside], 400)];
    expect(nearest('outside-opening', levelOf({ walls, openings: [window] }), [8500, 3000])).toBeCloseTo(measured, 6);
  });

  it('of two that lie on each other both are outside walls where one is', () => {
    const ends: [XY, XY] = [
      [5000, 0],
      [5000, 20_000],
    ];
    const walls = [...outer, drawn('thin', ...ends, 100, 'outside'), drawn('thick', ...ends, 300, 'inside')];
    expect(nearest('outside-wall', levelOf({ walls }), [5550 + RADIUS, 10_000])).toBeCloseTo(400, 6);
  });
});

describe('the second computation: what holds the detector', () => {
  const table = (top: number) =>
    hall({
      objects: [
        { id: 't', name: '', shape: { box: { center: [0, 5000], width: 600, depth: 600, turn: 0 } }, bottom: 0, top },
      ],
    });

  it.each([
    ['a table under its whole foot', table(900), {}, [{ subject: 't', verdict: 'clear', notRun: false }]],
    ['a table 3 mm lower', table(897), {}, [{ subject: 't', verdict: 'clear', notRun: false }]],
    ['a table 4 mm lower', table(896), {}, [{ verdict: 'unknown', notRun: true }]],
    ['a table that it stands over', table(900), { at: [280, 5000] as XY }, [{ verdict: 'unknown', notRun: true }]],
    ['nothing', hall(), {}, [{ verdict: 'unknown', notRun: true }]],
    ['a hook', hall(), { support: 'hung' as const }, [{ subject: null, verdict: 'clear', notRun: false }]],
  ])('%s', (_, level, detector, rows) => {
    expect(rowsOf('support', level, detector)).toMatchObject(rows);
  });
});

describe('both computations: machines that must be off', () => {
  it('are those that the list names, and nothing else nearby', () => {
    for (const [kind, count] of [
      ['portable-fan', 1],
      ['furnace', 0],
      ['sump-pit', 0],
    ] as const) {
      const level = { ...hall({ fixtures: [fixtureAt(kind)] }), detectors: [hallDetector({ at: [500, 5000] })] };
      const plan = planUnder('illinois-422-130', [level]);
      const [first, second] = [checkPlan(plan), recheck(plan)];
      for (const { levels } of second.ok ? [first, second] : [])
        expect(levels[0]?.detectors[0]?.checks.filter(({ rule }) => rule === 'running-machine').length, kind).toBe(
          count,
        );
      expect(second.ok).toBe(true);
    }
  });
});

describe('the second computation: a list without a distance', () => {
  it('an opening is looked for where none is drawn, and not run where one is', () => {
    const rowOf = (level: Level) => {
      const detectors = [hallDetector()];
      const opinion = recheck(planUnder('health-canada-long-term', [{ ...level, detectors }]));
      return opinion.ok ? opinion.levels[0]?.detectors[0]?.checks.find(({ rule }) => rule === 'outside-opening') : null;
    };
    const lookedFor: Level['lookedFor'] = ['outside-opening'];
    expect(rowOf(hall({ openings: [], lookedFor }))).toMatchObject({ verdict: 'clear', notRun: false });
    expect(rowOf(hall({ openings: [] }))).toMatchObject({ verdict: 'unknown', notRun: true });
    expect(rowOf(hall({ lookedFor }))).toMatchObject({ verdict: 'unknown', notRun: true });
  });

  const heater = (bottom: number, top: number) => hall({ fixtures: [fixtureAt('radiator', { bottom, top })] });

  it.each([
    ['that ends at its underside', 0, 900, false],
    ['that reaches a mm into it', 0, 901, true],
    ['that begins at its top', 925, 2000, false],
    ['that begins a mm below its top', 924, 2000, true],
  ])('a thing under or over the rim %s', (_, bottom, top, isBlocked) => {
    const opinion = recheck(
      planUnder('health-canada-long-term', [
        { ...heater(bottom, top), detectors: [hallDetector({ at: [RADIUS - 1, 5000] })] },
      ]),
    );
    const rows = opinion.ok ? opinion.levels[0]?.detectors[0]?.checks.filter(({ rule }) => rule === 'heat') : [];
    expect(rows).toMatchObject([isBlocked ? { subject: 'f', verdict: 'blocked' } : { notRun: true }]);
  });
});
