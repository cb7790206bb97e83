import { describe, expect, it } from 'vitest';
import { checkDetector } from '../../../geometry/check/check-detector.ts';
import { buildLevel } from '../../../geometry/level/build-level.ts';
import type { FixtureKind, RoomUse } from '../../../geometry/plan/model.ts';
import { citationFor } from '../../../geometry/rules/citation.ts';
import { effectiveRules, PROFILES } from '../../../geometry/rules/profiles.ts';
import type { RuleId } from '../../../geometry/rules/types.ts';
import { fixtureAt, hall, hallDetector, planUnder } from '../../helpers/hall.ts';

/* The limits of new plans, in inches, typed by hand: the table in the code is compared with them. */

const rules = effectiveRules({ profile: 'home-short-term', overrides: [] });
const ruleOf = (id: RuleId) => rules.find((rule) => rule.id === id);

describe('the profile home-short-term', () => {
  it.each<[RuleId, number | null, number | null, string]>([
    ['room-use', null, null, 'none'],
    ['level', null, null, 'none'],
    ['height-band', 20, 72, 'height'],
    ['ceiling', 12, null, 'height'],
    ['outside-opening', 36, null, 'plan'],
    ['outside-wall', 12, null, 'plan'],
    ['moving-air', 36, null, 'plan'],
    ['heat', 48, null, 'plan'],
    ['direct-sun', 48, null, 'plan'],
    ['sump', 84, null, 'plan'],
    ['floor-drain', 36, null, 'plan'],
    ['washer-dryer', 120, null, 'plan'],
    ['object', 4, null, 'space'],
    ['support', null, null, 'none'],
    ['companion', 4, 8, 'plan'],
  ])('%s: at least %s in, at most %s in, measured in %s', (id, least, most, measured) => {
    const mm = (inches: number | null) => (inches === null ? null : expect.closeTo(inches * 25.4, 6));
    expect(ruleOf(id)).toMatchObject({ least: mm(least), most: mm(most), measured });
  });

  it('has these rules and no other', () => {
    expect(rules.length).toBe(15);
  });

  const AIR = [
    'supply-register',
    'return-grille',
    'exhaust-fan',
    'ceiling-fan',
    'portable-fan',
    'window-air-conditioner',
    'air-cleaner',
    'dehumidifier',
    'humidifier',
  ] as const;
  const HEAT = ['furnace', 'boiler', 'water-heater', 'fireplace', 'wood-stove', 'radiator', 'space-heater'] as const;
  const kindsOf: readonly (readonly [FixtureKind, RuleId])[] = [
    ...AIR.map((kind) => [kind, 'moving-air'] as const),
    ...HEAT.map((kind) => [kind, 'heat'] as const),
    ['sump-pit', 'sump'],
    ['floor-drain', 'floor-drain'],
    ['washer', 'washer-dryer'],
    ['dryer', 'washer-dryer'],
    ['mitigation-pipe', 'object'],
  ];
  it.each(kindsOf)('a %s falls under %s alone', (kind, expected) => {
    const level = hall({ fixtures: [fixtureAt(kind, { top: 2000 })] });
    const { checks } = checkDetector(
      planUnder('home-short-term', [level]),
      buildLevel(level),
      hallDetector({ at: [120, 5000] }),
    );
    expect(
      checks.filter(({ subject, verdict }) => subject === 'f' && verdict === 'blocked').map(({ rule }) => rule),
    ).toEqual([expected]);
  });

  const MAY: readonly RoomUse[] = [
    'family-room',
    'living-room',
    'bedroom',
    'playroom',
    'den',
    'office',
    'exercise-room',
    'workshop',
    'dining-room',
    'unfinished',
  ];
  const MAY_NOT: readonly RoomUse[] = [
    'kitchen',
    'bathroom',
    'laundry',
    'spa',
    'closet',
    'storage',
    'utility',
    'stair',
    'hall',
    'crawlspace',
    'garage',
  ];
  it.each([...MAY.map((use) => [use, 'clear'] as const), ...MAY_NOT.map((use) => [use, 'blocked'] as const)])(
    'a detector in a room of the use %s is %s by room-use',
    (use, verdict) => {
      const level = hall({ rooms: [{ id: 'r', name: '', use, at: [0, 0] }] });
      const { checks } = checkDetector(planUnder('home-short-term', [level]), buildLevel(level), hallDetector());
      expect(checks.find(({ rule }) => rule === 'room-use')).toMatchObject({ verdict });
    },
  );
});

describe('every profile', () => {
  const rows = PROFILES.flatMap(({ id, rules }) => rules.map((rule) => [id, rule.id, rule] as const));

  it.each(rows)('%s, %s: has words and sources', (_, __, { name, says, absent, sources }) => {
    for (const text of [name, says]) expect(text).toMatch(/^[A-Z].{3,}/);
    if (absent !== null) expect(absent).toMatch(/^No .{3,}/);
    expect(sources.length).toBeGreaterThan(0);
    for (const { of } of sources) if (of) expect(of.length).toBeGreaterThan(0);
  });

  it.each(PROFILES.map((profile) => [profile.id, profile] as const))('%s: says what it is', (_, { name, about }) => {
    expect(name).toMatch(/\S{3}/);
    expect(about).toMatch(/.{20}/);
  });

  it.each([
    ...['closet', 'crawlspace', 'garage', 'stair', 'hall'].flatMap((use) =>
      PROFILES.map(({ id }) => [id, use] as const),
    ),
  ])('%s: no detector in a %s, with its own source or "common practice"', (profile, use) => {
    const level = hall({ rooms: [{ id: 'r', name: '', use: use as RoomUse, at: [0, 0] }] });
    const { checks } = checkDetector(planUnder(profile, [level]), buildLevel(level), hallDetector());
    const row = checks.find(({ rule }) => rule === 'room-use');
    expect(row?.verdict).toBe('blocked');
    expect(row?.sources.length).toBeGreaterThan(0);
    const isHabit = row?.sources.every(({ mark }) => mark === 'common-practice') ?? false;
    expect(row?.reason.includes('Common practice, no published source.')).toBe(isHabit);
  });

  it('cites for a part the sources of that part, and for the rest those without one', () => {
    const source = (clause: string, of?: readonly FixtureKind[]) => ({
      ...(rules[0]?.sources[0] as object),
      clause,
      of,
    });
    const sources = [source('all'), source('pit', ['sump-pit'])] as unknown as (typeof rules)[number]['sources'];
    expect(citationFor({ sources }, 'sump-pit').sources).toEqual([sources[1]]);
    expect(citationFor({ sources }, 'washer').sources).toEqual([sources[0]]);
    expect(citationFor({ sources }, null).sources).toEqual([sources[0]]);
    expect(citationFor({ sources }, null)).toBe(citationFor({ sources }, null));
  });
});
