import { describe, expect, it } from 'vitest';
import { buildLevel } from '../../../geometry/level/build-level.ts';
import type { Fixture, Level, Mm, Wall } from '../../../geometry/plan/model.ts';
import { levelRegion } from '../../../geometry/region/level-region.ts';
import { nearestSpot } from '../../../geometry/region/nearest.ts';
import { obstaclesOf } from '../../../geometry/region/obstacles.ts';
import { effectiveRules, PROFILES } from '../../../geometry/rules/profiles.ts';
import { fixtureAt, hall, planUnder } from '../../helpers/hall.ts';

const PROBE = { base: 900, radius: 50, tall: 25 };
const regionOf = (level: Level, spare?: number, probe = PROBE, profile = 'home-short-term') => {
  const plan = planUnder(profile, [level]);
  const options = spare === undefined ? {} : { spare };
  return levelRegion(plan, buildLevel(level), probe, options);
};

describe('levelRegion(plan, model, probe, options)', () => {
  /** Walls of 12 in and a window of 36 in; the round corners are not counted. */
  const bare = hall({ openings: [] });
  it.each([
    // 20 m minus twice 12 in, the radius, and the extra distance; 0.1 mm of each limit need not be kept.
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

  it.each([
    // 1,900 minus 12 in (304.8) is 1,595.2: the top may not be above, except for 0.1 mm.
    [1595.2 - 25, 0, true],
    [1595.3 - 25, 0, true],
    [1595.31 - 25, 0, false],
    [1595.2 - 25 - 9, 10, false],
    [1595.2 - 25 - 10, 10, true],
  ] as const)(
    'under a ceiling of 1,900 mm, at a base of %s mm with %s to spare there is one: %s',
    (base, spare, isOpen) => {
      const [room] = regionOf(hall({ openings: [], ceiling: 1900 }), spare, { ...PROBE, base }).rooms;
      expect((room?.area ?? 0) > 0).toBe(isOpen);
      expect(room?.barredBy).toBe(isOpen ? null : 'ceiling');
    },
  );

  it('takes a wall for the rim alone only where no zone of it is as wide', () => {
    const level = hall();
    const bareWalls = (profile: string) =>
      obstaclesOf(planUnder(profile, [level]), buildLevel(level), PROBE, 0).all.filter(({ zone }) => !zone).length;
    expect(bareWalls('home-short-term')).toBe(0);
    const inner = { id: 'p', from: [0, -10_100], to: [0, 10_100], thickness: 100, side: 'auto' } as const;
    const divided = hall({ walls: [...level.walls, inner] });
    const plan = planUnder('pennsylvania-240-310', [divided]);
    // That list names no interior walls.
    expect(obstaclesOf(plan, buildLevel(divided), PROBE, 0).all.some(({ zone }) => !zone)).toBe(true);
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
    // Two rules whose zones are equally wide stay separate: each zone is drawn on its own.
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

describe('after an edit', () => {
  /** Returns a level with two rooms and items in both. */
  const house = (left: readonly [Mm, Mm], right: readonly [Mm, Mm]): Level => {
    const level = hall();
    const inner: Wall = { id: 'p', from: [0, -10_100], to: [0, 10_100], thickness: 100, side: 'auto' };
    const boxAt = (id: string, center: readonly [Mm, Mm]): Fixture =>
      fixtureAt('furnace', { id, shape: { box: { center, width: 400, depth: 600, turn: 0 } } });
    return {
      ...level,
      openings: [],
      walls: [...level.walls, inner],
      rooms: [-5000, 5000].map((x) => ({ id: `r${x}`, name: '', use: 'den', at: [x, 0] })),
      fixtures: [boxAt('a', left), boxAt('b', right), boxAt('c', [5000, -6000])],
    };
  };
  /** Returns area and outline of each room: sums of the start points of its edges, or of the points that they turn about. */
  const shapes = (level: Level, probe = PROBE) =>
    regionOf(level, undefined, probe).rooms.map(({ area, rings }) => {
      const corners = rings.flat().map((edge) => (edge.kind === 'line' ? edge.from : edge.center));
      return [area, ...[0, 1].map((axis) => corners.reduce((sum, p) => sum + (p[axis] as Mm), 0))].map(Math.round);
    });

  it.each<[string, readonly [Mm, Mm], readonly [Mm, Mm]]>([
    ['in one room', [-6000, 1500], [5000, 3000]],
    ['in the other', [-5000, 0], [7000, 2000]],
    ['in both at once', [-9000, 9000], [9000, 9500]],
    ['across the wall', [4000, 0], [-4000, 0]],
  ])('the region is what it is from nothing: things moved %s', (_, left, right) => {
    const before = house([-5000, 0], [5000, 3000]);
    shapes(before);
    const moved = house(left, right);
    // The walls and every unmoved item keep their identity, as when the app edits a level.
    const fixtures = before.fixtures.map((old, i) => {
      const made = moved.fixtures[i] as Fixture;
      return JSON.stringify(made) === JSON.stringify(old) ? old : made;
    });
    const edited = { ...before, fixtures };
    const fresh = structuredClone(edited);
    expect(shapes(edited)).toEqual(shapes(fresh));
    expect(shapes(before)).toEqual(shapes(structuredClone(before)));
    expect(shapes(fresh)).not.toEqual(shapes(before));
  });

  it('the region is that of the detector at hand, whichever was asked about before', () => {
    const level = house([-5000, 0], [5000, 3000]);
    const probes = [50, 120, 50, 80].map((radius) => ({ ...PROBE, radius }));
    for (const probe of probes) expect(shapes(level, probe)).toEqual(shapes(structuredClone(level), probe));
    const tops = [PROBE, { ...PROBE, tall: 400 }, { ...PROBE, base: 700 }];
    for (const probe of tops) expect(shapes(level, probe)).toEqual(shapes(structuredClone(level), probe));
  });

  /** Returns the area of the room for several detectors in turn, with the same model. */
  const areasOf = (level: Level, changes: readonly Partial<typeof PROBE>[]) => {
    const [plan, model] = [planUnder('home-short-term', [level]), buildLevel(level)];
    return changes.map((change) => levelRegion(plan, model, { ...PROBE, ...change }).rooms[0]?.area ?? 0) as [
      Mm,
      Mm,
      Mm,
    ];
  };

  it('an object keeps a detector away that is lower than its top, and not the next one, which is higher', () => {
    const shape = { box: { center: [0, 5000], width: 400, depth: 600, turn: 0 } } as const;
    const level = { ...hall({ openings: [] }), objects: [{ id: 'box', name: '', shape, bottom: 0, top: 800 }] };
    const areas = areasOf(level, [{}, { base: 700 }, {}]);
    expect(areas[2]).toBe(areas[0]);
    // 4 in from the rim of 50, minus 0.1 mm: the box, its sides, and its round corners.
    const away = 101.6 + 50 - 0.1;
    const kept = 400 * 600 + 2 * (400 + 600) * away + Math.PI * away ** 2;
    expect(areas[0] - areas[1]).toBeCloseTo(kept, -1);
  });

  it('an object that hangs keeps a tall detector away, and a short one after it not', () => {
    const shape = { box: { center: [0, 5000], width: 400, depth: 600, turn: 0 } } as const;
    const level = { ...hall({ openings: [] }), objects: [{ id: 'box', name: '', shape, bottom: 1200, top: 1500 }] };
    const areas = areasOf(level, [{}, { tall: 250 }, {}]);
    expect(areas[2]).toBe(areas[0]);
    expect(areas[0] - areas[1]).toBeGreaterThan(400 * 600);
  });

  it('the zone of a table that carries the detector has a hole where the whole foot is on it; of a heater it has none', () => {
    const shape = { box: { center: [0, 5000], width: 2000, depth: 2000, turn: 0 } } as const;
    // Its top is 2 mm above the underside: within the tolerance for support.
    const table = { ...hall({ openings: [] }), objects: [{ id: 't', name: '', shape, bottom: 0, top: 902 }] };
    const [zone] = regionOf(table).zones.filter(({ subject }) => subject === 't');
    const lengths = zone?.outlines.map((ring) => ring.filter(({ kind }) => kind === 'line').length);
    expect(lengths).toEqual([4, 4]);
    const heaters = [902, 1500].map((top) => hall({ openings: [], fixtures: [fixtureAt('furnace', { shape, top })] }));
    const [low, high] = heaters.map((level) => regionOf(level).rooms[0]?.area);
    expect(low).toBe(high);
  });

  it('the outline of a zone is as far from its subject as the limit asks for, and the radius', () => {
    const shape = { circle: { center: [0, 5000], radius: 300 } } as const;
    const { zones } = regionOf({ ...hall(), fixtures: [fixtureAt('furnace', { shape })] });
    const [heat] = zones.filter(({ rule }) => rule === 'heat');
    const corners = heat?.outlines.flat().flatMap((edge) => (edge.kind === 'arc' ? [edge.radius] : [])) ?? [];
    expect(corners.length).toBeGreaterThan(0);
    for (const radius of corners) expect(radius).toBeCloseTo(300 + 1219.2 + 50 - 0.1, 6);
  });
});

it('a rule without a figure has no zone, with distance to spare either', () => {
  const level = hall();
  for (const spare of [0, 100]) {
    const { zones } = regionOf(level, spare, PROBE, 'health-canada-long-term');
    expect(zones.length).toBeGreaterThan(0);
    expect(zones.filter(({ rule }) => rule === 'outside-opening')).toEqual([]);
  }
});
