import { describe, expect, it } from 'vitest';
import { buildLevel } from '../../../geometry/level/build-level.ts';
import type { Level } from '../../../geometry/plan/model.ts';
import { levelRegion } from '../../../geometry/region/level-region.ts';
import { nearestSpot } from '../../../geometry/region/nearest.ts';
import { effectiveRules, PROFILES } from '../../../geometry/rules/profiles.ts';
import { fixtureAt, hall, planUnder } from '../../helpers/hall.ts';

const PROBE = { base: 900, radius: 50, tall: 25 };
const regionOf = (level: Level, spare?: number, probe = PROBE, profile = 'home-short-term') => {
  const plan = planUnder(profile, [level]);
  const options = spare === undefined ? {} : { spare };
  return levelRegion(plan, buildLevel(level), probe, options);
};

describe('levelRegion(plan, model, probe, options)', () => {
  /** Walls of 12 in and a window of 36 in; with the round corners left out of account. */
  const bare = hall({ openings: [] });
  it.each([
    // 20 m less twice 12 in, the radius, and what is to spare; 0.1 mm of each limit need not be kept.
    [undefined, (20_000 - 2 * (304.8 + 50 - 0.1)) ** 2],
    [0, (20_000 - 2 * (304.8 + 50 - 0.1)) ** 2],
    [100, (20_000 - 2 * (304.8 + 50 + 100)) ** 2],
  ])('keeps %s mm more than every limit', (spare, area) => {
    expect(regionOf(bare, spare).rooms[0]?.area).toBeCloseTo(area, -1);
  });

  it.each([
    // 20 to 72 in from underside to top, 12 in below the ceiling of 3,000.
    [508, 0, true],
    [507.9, 0, true],
    [507.89, 0, false],
    [517, 10, false],
    [518, 10, true],
    [1828.8 - 25, 0, true],
    [1828.9 - 25, 0, true],
    [1828.91 - 25, 0, false],
    [1828.8 - 25 - 9, 10, false],
    [1828.8 - 25 - 10, 10, true],
  ] as const)('at a base of %s mm with %s to spare there is one: %s', (base, spare, isOpen) => {
    const [room] = regionOf(bare, spare, { ...PROBE, base }).rooms;
    expect((room?.area ?? 0) > 0).toBe(isOpen);
    expect(room?.barredBy).toBe(isOpen ? null : 'height-band');
  });

  it('is empty, and no spot is the nearest, where the room bars a detector', () => {
    const region = regionOf(hall({ rooms: [{ id: 'r', name: '', use: 'garage', at: [0, 0] }] }));
    expect(region.rooms).toMatchObject([{ area: 0, rings: [], barredBy: 'room-use' }]);
    expect(nearestSpot(region, [0, 0])).toBe(null);
  });

  it('is the same, room by room, after a thing went away and came back', () => {
    const level = hall();
    const with1 = { ...level, fixtures: [fixtureAt('furnace')] };
    const before = regionOf(level).rooms[0]?.area ?? 0;
    const less = regionOf(with1).rooms[0]?.area ?? 0;
    expect(less).toBeLessThan(before - 1e6);
    expect(regionOf({ ...with1, fixtures: [] }).rooms[0]?.area).toBe(before);
    // Two rules whose zones are equally wide stay apart: each zone is drawn as its own.
    const both = hall({ fixtures: [fixtureAt('supply-register'), fixtureAt('floor-drain', { id: 'g' })] });
    const rules = regionOf(both).zones.map(({ rule }) => rule);
    expect(rules).toContain('moving-air');
    expect(rules).toContain('floor-drain');
  });
});

describe('every profile', () => {
  const rows = PROFILES.flatMap(({ id }) =>
    effectiveRules({ profile: id, overrides: [] }).map((rule) => [id, rule] as const),
  );
  it.each(rows.filter(([, { subject }]) => subject.of === 'opening' || subject.of === 'outside-wall'))(
    '%s: a place beside a window or wall is shaded as far as its list asks for',
    (profile, { id, least }) => {
      const zones = regionOf(hall(), 0, PROBE, profile).zones.filter(({ rule }) => rule === id);
      expect(zones.length > 0).toBe((least ?? 0) > 0.1);
    },
  );

  it.each(
    rows.filter(([, { subject }]) =>
      ['opening', 'outside-wall', 'fixture', 'running', 'companion', 'sun'].includes(subject.of),
    ),
  )('%s: what is kept away from is measured in plan', (_, { measured }) => {
    expect(measured).toBe('plan');
  });
});
