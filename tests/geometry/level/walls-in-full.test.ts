import { describe, expect, it } from 'vitest';
import { checkDetector } from '../../../geometry/check/check-detector.ts';
import { buildLevel } from '../../../geometry/level/build-level.ts';
import { drawn, loop, rectangle, wall } from '../../helpers/drawn.ts';
import { fixturePlan } from '../../helpers/fixtures.ts';

/** Returns the rows of one rule for the detector of a fixture: subject, measured to 0.01 mm, verdict. */
function rows(fixture: string, rule: string, without = ''): [string | null, number, string][] {
  const plan = fixturePlan(fixture);
  const [drawn] = plan.levels;
  const [detector] = drawn?.detectors ?? [];
  if (!drawn || !detector) throw new Error(`${fixture} has no detector`);
  const level = { ...drawn, walls: drawn.walls.filter(({ id }) => id !== without) };
  return checkDetector(plan, buildLevel(level), detector)
    .checks.filter((check) => check.rule === rule)
    .map(({ subject, measured, verdict }) => [subject, Math.round((measured ?? Number.NaN) * 100) / 100, verdict]);
}

describe('a foundation keeps its inner corner, whatever partition starts there', () => {
  // The corner of the foundation's faces is 150 from both center-lines: the same place as without the partition.
  it.each([
    ['partition-at-inner-corner', ['f3', 'f4'], 232, '232 from rim to corner, as drawn'],
    ['partition-at-inner-corner-of-t', ['f6', 'f7'], 232, '232 from rim to corner, as drawn'],
    ['partition-at-inner-corner-of-u', ['f5', 'f6'], 232, '232 from rim to corner, as drawn'],
    ['partition-at-inner-corner-at-45', ['f3', 'f4'], 290, '290 straight above the face, 40 along it from the corner'],
    [
      'partition-of-equal-thickness-at-inner-corner',
      ['f3', 'f4'],
      241.43,
      'hypot(150, 250.8) − 50.8 to the corner; the partition is nearer, but inside',
    ],
  ])('%s: exterior walls %j at %d (%s)', (fixture, walls, measured) => {
    expect(rows(fixture, 'outside-wall')).toEqual(walls.map((wall) => [wall, measured, 'blocked']));
  });
});

describe('walls that lie on one another', () => {
  it('a thin one askew on a thick one takes nothing of it', () => {
    // The thick face is at 150, the axis at 384.8. The thin one has its face at 54: 384.8 − 54 − 50.8.
    expect(rows('wall-laid-askew-on-a-thick-one', 'outside-wall')).toEqual([
      ['f1', 184, 'blocked'],
      ['p', 280, 'blocked'],
    ]);
  });

  it('two equal ones askew are both exterior walls, and the inner face counts', () => {
    // At x = 4000 the second runs 4 farther in: its face at 154, the axis at 454.8.
    expect(rows('two-equal-walls-askew', 'outside-wall')).toEqual([
      ['p', 250, 'blocked'],
      ['f1', 254, 'blocked'],
    ]);
  });

  it('are told with their ids and how far they lie on one another', () => {
    for (const fixture of ['wall-laid-askew-on-a-thick-one', 'two-equal-walls-askew']) {
      const [level] = fixturePlan(fixture).levels;
      const told = level && buildLevel(level).notices.filter(({ kind }) => kind === 'walls-overlap');
      expect(told?.map(({ ids, length }) => [ids, Math.round(length ?? 0)])).toEqual([[['f1', 'p'], 8000]]);
    }
  });

  it('give an opening the depth of the thickest', () => {
    // The window extends to the thick face at 150; the axis is at 1040.2.
    expect(rows('opening-in-the-thinner-of-two-walls', 'outside-opening')).toEqual([['o1', 839.4, 'blocked']]);
  });
});

describe('two ends 10 mm apart', () => {
  // The piece from the end of q to p runs down the page and is as thick as q: its face is 150 right of the ends, at 2550. The
  // axis is at 2700: 2700 − 2550 − 50.8.
  it.each(['', 'third'])(
    'are joined as thick as they are, with or without a third wall between them (without %j)',
    (without) => {
      expect(rows('third-wall-over-a-gap', 'object', without)).toEqual([['q', 99.2, 'blocked']]);
    },
  );
});

describe('studs in front of a foundation', () => {
  it('are exterior walls: the space between is nowhere wider than 305 mm and has no label', () => {
    expect(rows('stud-wall-before-a-foundation', 'outside-wall')).toEqual([['s1', 200, 'blocked']]);
  });

  it('give an opening the depth of a thick one that crosses it at a flat angle', () => {
    // At both ends of the window the center-lines are 18 mm apart, in the middle they meet.
    const walls = [
      ...loop('f', rectangle(0, 0, 8000, 6000), { thickness: 300 }),
      wall('p', [2000, -80], [6000, 80], { thickness: 100 }),
    ];
    const openings = [
      { id: 'o', wall: 'p', kind: 'window' as const, offset: 1551.6, width: 900, bottom: 900, top: 2000 },
    ];
    const [opening] = buildLevel(drawn(walls, { openings })).openings;
    const [a, , , d] = opening?.body ?? [];
    expect(Math.hypot((a?.[0] ?? 0) - (d?.[0] ?? 0), (a?.[1] ?? 0) - (d?.[1] ?? 0))).toBeCloseTo(300, 9);
  });

  it('have exterior openings', () => {
    // The window ends at x = 1750, face at y = 295; the axis at (4000, 545.8): hypot(2250, 250.8) − 50.8.
    expect(rows('stud-wall-before-a-foundation', 'outside-opening')).toEqual([['o1', 2213.13, 'clear']]);
  });
});
