import { describe, expect, it } from 'vitest';
import { checkDetector } from '../geometry/check/check-detector.ts';
import type { Check, Verdict } from '../geometry/check/types.ts';
import { buildLevel } from '../geometry/level/build-level.ts';
import type { Detector, FixtureKind, Level, Shape } from '../geometry/plan/model.ts';
import { HOME_SHORT_TERM_ID, profileById } from '../geometry/rules/profiles.ts';
import type { RuleId, SourceMark } from '../geometry/rules/types.ts';
import { fixtureAt, hall, hallDetector, planUnder, RADIUS } from './helpers/hall.ts';

/*
 * The clearances of `home-short-term`, typed in by hand from the published texts and held against the rule table and
 * against real checks on both sides of every limit. 25 Pa. Code 240.310 (2018, effective 24 Jan 2019) was read in full for
 * placement; 32 Ill. Adm. Code 422.130(a)(1)(D)-(F) has the same figure where it is named beside it.
 */
const FEET = 304.8;
const INCHES = 25.4;

const PUBLISHED: { rule: RuleId; limit: 'least' | 'most'; mm: number; source: string }[] = [
  {
    rule: 'height-band',
    limit: 'least',
    mm: 20 * INCHES,
    source: '25 Pa. Code 240.310(a)(1), 20 in above the floor; Ill. the same',
  },
  {
    rule: 'height-band',
    limit: 'most',
    mm: 6 * FEET,
    source: '25 Pa. Code 240.310(a)(1), 6 ft above the floor; Ill. the same',
  },
  { rule: 'ceiling', limit: 'least', mm: 1 * FEET, source: '25 Pa. Code 240.310(a)(1), 1 ft below the ceiling' },
  {
    rule: 'outside-opening',
    limit: 'least',
    mm: 3 * FEET,
    source: '25 Pa. Code 240.310(a)(1), 3 ft from exterior doors and windows; Ill. the same',
  },
  {
    rule: 'outside-wall',
    limit: 'least',
    mm: 1 * FEET,
    source: '25 Pa. Code 240.310(a)(1), 1 ft from exterior walls; Ill. the same',
  },
  {
    rule: 'moving-air',
    limit: 'least',
    mm: 3 * FEET,
    source: '25 Pa. Code 240.310(a)(1), 3 ft from ventilation ducts; Ill. the same',
  },
  {
    rule: 'heat',
    limit: 'least',
    mm: 4 * FEET,
    source: '25 Pa. Code 240.310(a)(1)(vi), 4 ft from heat; Ill. the same',
  },
  {
    rule: 'direct-sun',
    limit: 'least',
    mm: 4 * FEET,
    source: '25 Pa. Code 240.310(a)(1)(vi), 4 ft, sunlight named as a heat source',
  },
  { rule: 'sump', limit: 'least', mm: 7 * FEET, source: '25 Pa. Code 240.310(a)(1), 7 ft from a sump; Ill. the same' },
  { rule: 'floor-drain', limit: 'least', mm: 3 * FEET, source: 'common practice, no published source' },
  {
    rule: 'washer-dryer',
    limit: 'least',
    mm: 10 * FEET,
    source: '25 Pa. Code 240.310(a)(2)(iii), 10 ft from a washer or dryer',
  },
  {
    rule: 'object',
    limit: 'least',
    mm: 4 * INCHES,
    source: '25 Pa. Code 240.310(a)(1), 4 in from objects beside and above; Ill. the same',
  },
  {
    rule: 'companion',
    limit: 'least',
    mm: 4 * INCHES,
    source: 'Minnesota licensing practice (2019), 4 to 8 in, secondary',
  },
  {
    rule: 'companion',
    limit: 'most',
    mm: 8 * INCHES,
    source: 'ANSI/AARST MAH-2019 8.5.2(d), farther than 8 in is another location',
  },
];

describe('the rule table of home-short-term', () => {
  it.each(PUBLISHED)('$rule, $limit: $mm mm ($source)', ({ rule, limit, mm }) => {
    const row = profileById(HOME_SHORT_TERM_ID)?.rules.find(({ id }) => id === rule);
    expect(row?.[limit]).toBeCloseTo(mm, 9);
  });

  it('has no figure that is not in the list above', () => {
    const figures = profileById(HOME_SHORT_TERM_ID)?.rules.flatMap(({ id, least, most }) => [
      ...(least === null ? [] : [`${id} least`]),
      ...(most === null ? [] : [`${id} most`]),
    ]);
    expect(figures?.sort()).toEqual(PUBLISHED.map(({ rule, limit }) => `${rule} ${limit}`).sort());
  });

  const marked = (mark: SourceMark) =>
    profileById(HOME_SHORT_TERM_ID)?.rules.flatMap(({ id, sources }) =>
      sources.filter((one) => one.mark === mark).map(({ cite, of }) => ({ id, cite, of })),
    );

  it('marks the floor drain as common practice, and storage rooms and garages', () => {
    const cite = 'common practice, no published source';
    expect(marked('common-practice')).toEqual([
      { id: 'room-use', cite, of: ['storage', 'garage'] },
      { id: 'floor-drain', cite, of: undefined },
    ]);
  });

  it('marks as our reading what no text says: fans at 3 ft, interior walls at 4 in, what carries, a pair in one room', () => {
    expect(marked('our-reading')?.map(({ id, of }) => [id, of?.length ?? 'all'])).toEqual([
      ['moving-air', 7],
      ['object', 1],
      ['support', 'all'],
      ['companion', 1],
    ]);
  });
});

function checkOf(rule: RuleId, level: Level, change: Partial<Detector>): Check {
  const detector = hallDetector(change);
  const check = checkDetector(planUnder(HOME_SHORT_TERM_ID, [level]), buildLevel(level), detector).checks.find(
    (one) => one.rule === rule,
  );
  if (!check) throw new Error(`no check of ${rule}`);
  return check;
}

const fixtureLevel = (kind: FixtureKind) => hall({ fixtures: [fixtureAt(kind)] });

/** For each limit: a check that lies `spare` mm above it. */
const AT_LIMIT: { what: string; rule: RuleId; at: (spare: number) => Check }[] = [
  { what: 'base 20 in', rule: 'height-band', at: (s) => checkOf('height-band', hall(), { base: 508 + s }) },
  { what: 'top 6 ft', rule: 'height-band', at: (s) => checkOf('height-band', hall(), { base: 1828.8 - 25 - s }) },
  {
    what: 'ceiling 1 ft',
    rule: 'ceiling',
    at: (s) => checkOf('ceiling', hall({ ceiling: 2000 }), { base: 2000 - 25 - 304.8 - s }),
  },
  {
    what: 'window 3 ft, straight in front',
    rule: 'outside-opening',
    at: (s) => checkOf('outside-opening', hall(), { at: [0, -10000 + 914.4 + RADIUS + s] }),
  },
  {
    what: 'window 3 ft, off its corner (3-4-5)',
    rule: 'outside-opening',
    at: (s) => {
      const away = 914.4 + RADIUS + s;
      return checkOf('outside-opening', hall(), { at: [500 + away * 0.6, -10000 + away * 0.8] });
    },
  },
  {
    what: 'exterior wall 1 ft',
    rule: 'outside-wall',
    at: (s) => checkOf('outside-wall', hall(), { at: [10000 - 304.8 - RADIUS - s, 0] }),
  },
  ...(
    [
      'supply-register',
      'return-grille',
      'exhaust-fan',
      'ceiling-fan',
      'portable-fan',
      'window-air-conditioner',
    ] as const
  ).map((kind) => ({
    what: `${kind} 3 ft`,
    rule: 'moving-air' as const,
    at: (s: number) => checkOf('moving-air', fixtureLevel(kind), { at: [914.4 + RADIUS + s, 5000] }),
  })),
  ...(['air-cleaner', 'dehumidifier', 'humidifier'] as const).map((kind) => ({
    what: `${kind} 3 ft`,
    rule: 'moving-air' as const,
    at: (s: number) => checkOf('moving-air', fixtureLevel(kind), { at: [914.4 + RADIUS + s, 5000] }),
  })),
  ...(['furnace', 'boiler', 'water-heater', 'fireplace', 'wood-stove', 'radiator', 'space-heater'] as const).map(
    (kind) => ({
      what: `${kind} 4 ft`,
      rule: 'heat' as const,
      at: (s: number) => checkOf('heat', fixtureLevel(kind), { at: [1219.2 + RADIUS + s, 5000] }),
    }),
  ),
  {
    what: 'sump 7 ft',
    rule: 'sump',
    at: (s) => checkOf('sump', fixtureLevel('sump-pit'), { at: [2133.6 + RADIUS + s, 5000] }),
  },
  {
    what: 'floor drain 3 ft',
    rule: 'floor-drain',
    at: (s) => checkOf('floor-drain', fixtureLevel('floor-drain'), { at: [914.4 + RADIUS + s, 5000] }),
  },
  ...(['washer', 'dryer'] as const).map((kind) => ({
    what: `${kind} 10 ft`,
    rule: 'washer-dryer' as const,
    at: (s: number) => checkOf('washer-dryer', fixtureLevel(kind), { at: [3048 + RADIUS + s, 5000] }),
  })),
  {
    what: 'exterior passage 3 ft, straight in front',
    rule: 'outside-opening',
    at: (s) => {
      const level = hall();
      const openings = level.openings.map((one) => ({ ...one, kind: 'passage' as const }));
      return checkOf('outside-opening', { ...level, openings }, { at: [0, -10000 + 914.4 + RADIUS + s] });
    },
  },
  {
    what: 'mitigation pipe 4 in',
    rule: 'object',
    at: (s) => {
      const level = hall({ fixtures: [fixtureAt('mitigation-pipe', { top: 3000 })] });
      return checkOf('object', level, { at: [101.6 + RADIUS + s, 5000] });
    },
  },
  ...([null, 'B'] as const).map((pair) => ({
    what: `another detector 4 in, its pair ${pair}`,
    rule: 'object' as const,
    at: (s: number) => {
      const other = hallDetector({ id: 'e', pair, at: [0, 5000] });
      return checkOf('object', hall({ detectors: [other] }), { pair: 'A', at: [2 * RADIUS + 101.6 + s, 5000] });
    },
  })),
  {
    what: 'object beside 4 in',
    rule: 'object',
    at: (s) => {
      const shape: Shape = { box: { center: [-100, 5000], width: 200, depth: 200, turn: 0 } };
      const level = hall({ objects: [{ id: 't', name: 'Cupboard', shape, bottom: 0, top: 1800 }] });
      return checkOf('object', level, { at: [101.6 + RADIUS + s, 5000] });
    },
  },
  {
    what: 'shelf above 4 in',
    rule: 'object',
    at: (s) => {
      const shape: Shape = { box: { center: [0, 5000], width: 400, depth: 400, turn: 0 } };
      const level = hall({ objects: [{ id: 't', name: 'Shelf', shape, bottom: 900 + 25 + 101.6 + s, top: 1800 }] });
      return checkOf('object', level, { at: [0, 5000] });
    },
  },
];

describe('each limit, met exactly and on both sides of it', () => {
  it.each(AT_LIMIT)('$what', ({ at }) => {
    const verdicts = (spares: number[]) => spares.map((spare): Verdict => at(spare).verdict);
    // Exactly met passes; up to 0.1 mm short counts as met; within the tape's inch it is tight; beyond, clear.
    expect(verdicts([-1, -0.11, -0.09, 0, 25.3, 25.5])).toEqual([
      'blocked',
      'blocked',
      'tight',
      'tight',
      'tight',
      'clear',
    ]);
    expect(at(12.5).margin).toBeCloseTo(12.5, 6);
  });
});

describe('side by side, rim to rim', () => {
  const pairAt = (apart: number) => {
    const other: Detector = {
      id: 'e',
      label: '',
      at: [2 * RADIUS + apart, 5000],
      base: 900,
      radius: RADIUS,
      tall: 25,
      pair: 'A',
    };
    return checkOf('companion', hall({ detectors: [other] }), { pair: 'A' });
  };

  it.each([
    { apart: 101.4, verdict: 'blocked' },
    { apart: 101.6, verdict: 'tight' },
    { apart: 152.4, verdict: 'clear' },
    { apart: 203.2, verdict: 'tight' },
    { apart: 203.4, verdict: 'blocked' },
  ])('$apart mm: $verdict (4 to 8 in)', ({ apart, verdict }) => {
    expect(pairAt(apart).verdict).toBe(verdict);
  });

  it('cannot be decided while the other one is missing', () => {
    expect(checkOf('companion', hall(), { pair: 'A' }).verdict).toBe('unknown');
  });
});
