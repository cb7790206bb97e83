import { describe, expect, it } from 'vitest';
import type { Check } from '../../../geometry/check/types.ts';
import {
  checkFigures,
  checksInOrder,
  describeCheck,
  describeNotRun,
  describeReport,
  figureWithLimit,
} from '../../../geometry/messages/index.ts';
import type { Fixture, Level, Plan } from '../../../geometry/plan/model.ts';
import { emptyLevel, emptyPlan } from '../../../geometry/planfile/empty.ts';

const inch = (inches: number) => inches * 25.4;
const plan: Plan = emptyPlan();
const metric: Plan = { ...plan, display: { ...plan.display, length: 'metric' } };
const fixture = (id: string, kind: Fixture['kind'], name = ''): Fixture => ({
  id,
  kind,
  name,
  shape: { circle: { center: [0, 0], radius: 100 } },
  bottom: 0,
  top: 0,
  stream: null,
});
const level: Level = {
  ...emptyLevel('L1'),
  walls: [{ id: 'w1', from: [0, 0], to: [5000, 0], thickness: 200, side: 'auto' }],
  openings: [
    { id: 'o1', wall: 'w1', kind: 'window', offset: 0, width: 800, bottom: 1000, top: 1500 },
    { id: 'o2', wall: 'w1', kind: 'window', offset: 2000, width: 800, bottom: 1000, top: 1500 },
    { id: 'o3', wall: 'w1', kind: 'door', offset: 3000, width: 800, bottom: 0, top: 2000 },
  ],
  fixtures: [fixture('f1', 'sump-pit'), fixture('f2', 'furnace', 'Old Bertha'), fixture('f3', 'supply-register')],
  objects: [{ id: 't1', name: 'Desk', shape: { circle: { center: [0, 0], radius: 9 } }, bottom: 0, top: 762 }],
  detectors: [{ id: 'd2', label: 'A2', at: [0, 0], base: 762, radius: 50.8, tall: 25.4, pair: 'A' }],
};

function check(part: Partial<Check> & Pick<Check, 'rule'>): Check {
  const { measured = null, required = null, bound = 'least' } = part;
  const over = measured === null || required === null ? null : measured - required;
  const margin = over !== null && bound === 'most' ? -over : over;
  return {
    subject: null,
    required,
    measured,
    margin,
    bound,
    verdict: 'clear',
    notRun: false,
    source: '',
    sources: [],
    override: null,
    witness: null,
    reason: '',
    ...part,
  };
}

describe('describeCheck', () => {
  // The expected sentences are written by hand; lengths are computed in inches.
  it.each<[string, Check, string]>([
    [
      'a distance in plan',
      check({ rule: 'sump', subject: 'f1', measured: inch(62), required: inch(84), verdict: 'blocked' }),
      '5 ft 2 in from the sump pit, needs 7 ft.',
    ],
    [
      'a thing that the user named',
      check({ rule: 'heat', subject: 'f2', measured: inch(40), required: inch(48), verdict: 'blocked' }),
      '3 ft 4 in from Old Bertha, needs 4 ft.',
    ],
    [
      'a thing that the user named with one plain word',
      check({ rule: 'object', subject: 't1', measured: inch(2), required: inch(4), verdict: 'blocked' }),
      '2 in from the desk, needs 4 in.',
    ],
    [
      'one of two windows, by its side of the compass (up the page is north)',
      check({
        rule: 'outside-opening',
        subject: 'o1',
        measured: inch(30),
        required: inch(36),
        verdict: 'blocked',
        witness: { rim: [0, 500], subject: [0, 0] },
      }),
      '2 ft 6 in from the window to the north, needs 3 ft.',
    ],
    [
      'the only door',
      check({ rule: 'outside-opening', subject: 'o3', measured: inch(30), required: inch(36), verdict: 'blocked' }),
      '2 ft 6 in from the door, needs 3 ft.',
    ],
    [
      'an exterior wall',
      check({
        rule: 'outside-wall',
        subject: 'w1',
        measured: inch(11),
        required: inch(12),
        verdict: 'blocked',
        witness: { rim: [0, 0], subject: [300, 0] },
      }),
      '11 in from the east exterior wall, needs 1 ft.',
    ],
    [
      'the least height',
      check({ rule: 'height-band', measured: inch(18), required: inch(20), verdict: 'blocked' }),
      '1 ft 6 in above the floor, needs 1 ft 8 in.',
    ],
    [
      'the greatest height',
      check({ rule: 'height-band', measured: inch(74), required: inch(72), bound: 'most', verdict: 'blocked' }),
      'Its top is 6 ft 2 in above the floor, 6 ft at the most.',
    ],
    [
      'the ceiling',
      check({ rule: 'ceiling', measured: inch(8), required: inch(12), verdict: 'blocked' }),
      '8 in below the ceiling, needs 1 ft.',
    ],
    [
      'a pair too far apart',
      check({
        rule: 'companion',
        subject: 'd2',
        measured: inch(9),
        required: inch(8),
        bound: 'most',
        verdict: 'blocked',
      }),
      '9 in from rim to rim with detector A2, 8 in at the most.',
    ],
    [
      'a body that it stands in',
      check({ rule: 'heat', subject: 'f2', measured: 0, required: inch(48), verdict: 'blocked' }),
      'Touches or covers Old Bertha, needs 4 ft.',
    ],
    [
      'a airflow, which has an edge and no distance',
      check({ rule: 'moving-air', subject: 'f3', measured: -inch(3), required: 0, verdict: 'blocked' }),
      '3 in inside the airflow of the supply register.',
    ],
    [
      'what cannot be decided, in the words of the engine',
      check({ rule: 'room-use', verdict: 'unknown', reason: 'the room has no use yet' }),
      'The room has no use yet.',
    ],
  ])('%s', (_name, one, words) => {
    expect(describeCheck(one, plan, level)).toBe(words);
  });

  it('turns with the north of the page: with north to the right, up the page is west', () => {
    const turned = { ...plan, site: { ...plan.site, north: 90 } };
    const one = check({
      rule: 'outside-wall',
      subject: 'w1',
      measured: inch(11),
      required: inch(12),
      verdict: 'blocked',
      witness: { rim: [0, 300], subject: [0, 0] },
    });
    expect(describeCheck(one, turned, level)).toBe('11 in from the west exterior wall, needs 1 ft.');
  });

  it('speaks meters in a metric plan', () => {
    const one = check({ rule: 'sump', subject: 'f1', measured: 1500, required: 2135, verdict: 'blocked' });
    expect(describeCheck(one, metric, level)).toBe('1.50 m from the sump pit, needs 2.135 m.');
  });
});

describe('figureWithLimit(check, plan)', () => {
  it('says of a least distance what it needs, and of a greatest one what it may be at most', () => {
    const short = check({ rule: 'sump', measured: inch(62), required: inch(84), verdict: 'blocked' });
    expect(figureWithLimit(short, plan)).toBe('5 ft 2 in, needs 7 ft');
    const apart = check({ rule: 'companion', measured: inch(9), required: inch(8), bound: 'most', verdict: 'blocked' });
    expect(figureWithLimit(apart, plan)).toBe('9 in, 8 in at most');
  });
});

describe('checkFigures rounds toward caution', () => {
  it('a least distance: measured down, to spare down, short by up', () => {
    const met = check({ rule: 'sump', measured: inch(84.2), required: inch(84), verdict: 'tight' });
    expect(checkFigures(met, plan)).toEqual({ measured: '7 ft 1/8 in', needed: '7 ft', spare: '1/8 in to spare' });
    const short = check({ rule: 'sump', measured: inch(83.99), required: inch(84), verdict: 'blocked' });
    expect(checkFigures(short, plan)).toEqual({
      measured: '6 ft 11 7/8 in',
      needed: '7 ft',
      spare: 'short by 1/8 in',
    });
  });

  it('a greatest distance: measured up, over by up', () => {
    const over = check({
      rule: 'companion',
      measured: inch(8.01),
      required: inch(8),
      bound: 'most',
      verdict: 'blocked',
    });
    expect(checkFigures(over, plan)).toEqual({ measured: '8 1/8 in', needed: '8 in', spare: 'over by 1/8 in' });
  });

  it('what meets its limit within the 0.1 mm of the contract never reads as short of it', () => {
    const exact = check({ rule: 'sump', measured: inch(84) - 0.09, required: inch(84), verdict: 'tight' });
    expect(checkFigures(exact, plan)).toEqual({ measured: '7 ft', needed: '7 ft', spare: '0 in to spare' });
  });
});

describe('checksInOrder', () => {
  it('puts blocked first, then unknown, tight, clear, and last what did not run', () => {
    const rules = checksInOrder([
      check({ rule: 'direct-sun', verdict: 'unknown', notRun: true }),
      check({ rule: 'room-use' }),
      check({ rule: 'ceiling', measured: inch(40), required: inch(12) }),
      check({ rule: 'heat', measured: inch(48.5), required: inch(48), verdict: 'tight' }),
      check({ rule: 'level', verdict: 'unknown' }),
      check({ rule: 'object', measured: inch(2), required: inch(4), verdict: 'blocked' }),
      check({ rule: 'sump', measured: inch(82), required: inch(84), verdict: 'blocked' }),
    ]).map(({ rule }) => rule);
    // 2 in short of 4 in comes before 2 in short of 7 ft.
    expect(rules).toEqual(['object', 'sump', 'level', 'heat', 'ceiling', 'room-use', 'direct-sun']);
  });
});

describe('describeReport', () => {
  const report = (verdict: Check['verdict'], checks: Check[]) => ({ id: 'd1', verdict, room: 'r1', checks });
  const sump = check({ rule: 'sump', subject: 'f1', measured: inch(62), required: inch(84), verdict: 'blocked' });
  const ceiling = check({ rule: 'ceiling', measured: inch(40), required: inch(12) });

  it('blocked: the worst check, then the names of the others', () => {
    const wall = check({
      rule: 'outside-wall',
      subject: 'w1',
      measured: inch(11),
      required: inch(12),
      verdict: 'blocked',
    });
    expect(describeReport(report('blocked', [ceiling, wall, sump]), plan, level)).toBe(
      '5 ft 2 in from the sump pit, needs 7 ft. Also blocked: exterior walls.',
    );
  });

  it('tight: what there is to spare, and to look again', () => {
    const near = check({ rule: 'sump', subject: 'f1', measured: inch(84.5), required: inch(84), verdict: 'tight' });
    expect(describeReport(report('tight', [ceiling, near]), plan, level)).toBe(
      'Measure again: 1/2 in to spare at the sump pit.',
    );
  });

  it('clear: the least that is to spare', () => {
    const far = check({ rule: 'sump', subject: 'f1', measured: inch(90), required: inch(84) });
    expect(describeReport(report('clear', [ceiling, far]), plan, level)).toBe(
      'Every rule that ran is met. The least around it is 6 in to spare, at the sump pit.',
    );
  });

  it('clear: what is least is the smallest length, not the smallest share of what is needed', () => {
    const far = check({ rule: 'washer-dryer', subject: 'f1', measured: inch(169), required: inch(120) });
    const wall = check({ rule: 'outside-wall', subject: 'w1', measured: inch(52), required: inch(12) });
    expect(describeReport(report('clear', [ceiling, far, wall]), plan, level)).toBe(
      'Every rule that ran is met. The least around it is 3 ft 4 in to spare, at the exterior wall.',
    );
  });

  it('clear: the height is said only where nothing around the detector is measured', () => {
    const height = check({ rule: 'height-band', measured: inch(30), required: inch(20) });
    const far = check({ rule: 'sump', subject: 'f1', measured: inch(99), required: inch(84) });
    expect(describeReport(report('clear', [height, far]), plan, level)).toBe(
      'Every rule that ran is met. The least around it is 1 ft 3 in to spare, at the sump pit.',
    );
    expect(describeReport(report('clear', [height]), plan, level)).toBe(
      'Every rule that ran is met. Height above the floor: 10 in to spare.',
    );
  });

  it('never says that rules are met when none ran', () => {
    const sun = check({ rule: 'direct-sun', verdict: 'unknown', notRun: true });
    expect(describeReport(report('unknown', [sun]), plan, level)).toBe(
      'Nothing was checked: draw the walls around it first.',
    );
  });
});

describe('describeNotRun', () => {
  it('names the item that the reason is about', () => {
    const checks = [
      check({ rule: 'object', subject: 't1', notRun: true, verdict: 'unknown', reason: 'Nobody measured it.' }),
      check({ rule: 'direct-sun', notRun: true, verdict: 'unknown', reason: 'No location.' }),
    ];
    const report = { id: 'd1', room: null, verdict: 'clear', checks } as const;
    expect(describeNotRun(report, plan, level)).toEqual([
      'Objects and interior walls, the desk: Nobody measured it.',
      'Direct sun: No location.',
    ]);
  });
});
