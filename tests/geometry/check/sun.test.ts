import { afterEach, describe, expect, it } from 'vitest';
import { checkDetector } from '../../../geometry/check/check-detector.ts';
import type { Check } from '../../../geometry/check/types.ts';
import { buildLevel } from '../../../geometry/level/build-level.ts';
import { describeCheck } from '../../../geometry/messages/index.ts';
import type { Detector, Level, Plan, XY } from '../../../geometry/plan/model.ts';
import { levelRegion } from '../../../geometry/region/level-region.ts';
import { arcRingsContain } from '../../../geometry/region/nearest.ts';
import { bestSpots } from '../../../geometry/search/best-spots.ts';
import { marginField } from '../../../geometry/search/field/margin-field.ts';
import { heightsAt } from '../../../geometry/search/heights.ts';
import { setSunSource } from '../../../geometry/sun/sun-floor.ts';
import { sweptArea } from '../../../geometry/sun/swept.ts';
import { seededRandom } from '../../helpers/seeded-level.ts';
import { HEIGHTS, type House, houseOf, INCH } from '../../helpers/sun-room.ts';
import { sunnyHouse } from '../../helpers/sunny-house.ts';

/** Number of points. The environment may select more: SUN_POINTS=100000. */
const POINTS = Number(process.env.SUN_POINTS ?? 2000);

const PROBE = { ...HEIGHTS, radius: 50.8 };
const detectorAt = (at: XY, base = PROBE.base): Detector => ({
  ...PROBE,
  id: 'd1',
  label: 'A1',
  at,
  base,
  pair: null,
  support: 'stand',
});
const levelOf = (plan: Plan) => plan.levels[0] as Level;
const rooms: Level['rooms'] = [{ id: 'r', name: '', use: 'den', at: [3000, 3000] }];
const den = (house: House = {}) => houseOf({ ...house, more: { rooms, ...house.more } });

function rowsAt(plan: Plan, at: XY, base?: number): readonly Check[] {
  return checkDetector(plan, buildLevel(levelOf(plan)), detectorAt(at, base)).checks.filter(
    ({ rule }) => rule === 'direct-sun',
  );
}

/** The window of the house is in the wall at y = 0, from x = 2000 to 3000; at its one instant light falls as far as y = 1451. */
const SUNLIT: XY = [2500, 1000];
const NEAR: XY = [2500, 2000];
const FAR: XY = [2500, 4000];

afterEach(() => setSunSource(sweptArea));

describe('the row of direct sun', () => {
  it('counts the sun up to the planned pick-up while none is recorded, and then up to the one that was', () => {
    const { start, end } = den().visit;
    const planned = den({ visit: { end: null, plannedEnd: end } });
    expect(rowsAt(planned, NEAR)).toEqual(rowsAt(den(), NEAR));
    expect(rowsAt(planned, FAR)).toMatchObject([{ verdict: 'clear', notRun: false }]);
    expect(rowsAt(den({ visit: { end: null } }), NEAR)).toMatchObject([{ verdict: 'unknown', notRun: true }]);
    // A recorded pick-up takes precedence over a planned one.
    const night = '2003-10-18T02:00:00-07:00';
    expect(
      rowsAt(den({ visit: { start: '2003-10-17T22:00:00-07:00', end: night, plannedEnd: end } }), NEAR),
    ).toMatchObject([{ verdict: 'clear' }]);
    const before = den({ visit: { start: night, end: null, plannedEnd: start } });
    expect(rowsAt(before, NEAR)).toMatchObject([
      { verdict: 'unknown', reason: 'The pick-up is planned before the start.' },
    ]);
  });

  it('names the window, and how far from its light the rim is', () => {
    const [row] = rowsAt(den(), NEAR);
    expect(row).toMatchObject({ verdict: 'blocked', notRun: false, subject: 'glass', required: 1219.2 });
    // Light through the head reaches 64.6 in minus 200 mm of wall; the lower edge of the disc and 10 mm more are allowed.
    const exact = 2000 - 50.8 - (64.6 * INCH - 200);
    expect(row?.measured).toBeGreaterThan(exact - 30);
    expect(row?.measured).toBeLessThan(exact);
    expect(rowsAt(den(), SUNLIT)).toMatchObject([{ verdict: 'blocked', measured: 0 }]);
    expect(rowsAt(den(), FAR)).toMatchObject([{ verdict: 'clear', subject: 'glass' }]);
  });

  it('keeps a detector out of the sun under a distance that is no more than rounding', () => {
    for (const distance of [0, 0.1]) {
      const plan = den();
      const protocol = { ...plan.protocol, overrides: [{ rule: 'direct-sun', distance, note: 'form' }] } as const;
      expect(rowsAt({ ...plan, protocol }, SUNLIT), `${distance} mm`).toMatchObject([{ verdict: 'blocked' }]);
    }
  });

  it.each<[string, House]>([
    ['the latitude', { site: { latitude: null } }],
    ['the longitude', { site: { longitude: null } }],
    ['the start', { visit: { start: null } }],
    ['the end', { visit: { end: null } }],
    ['north', { site: { northAnswered: false } }],
  ])('is not run without %s', (_, house) => {
    expect(rowsAt(den(house), FAR)).toMatchObject([{ verdict: 'unknown', notRun: true, measured: null }]);
    const looked = den({ ...house, more: { lookedFor: ['direct-sun'] } });
    expect(rowsAt(looked, FAR)).toMatchObject([{ verdict: 'clear', notRun: false, measured: null }]);
  });

  it.each<[string, House]>([
    ['North is not given. Keep out of direct sun.', {}],
    ['The location of the house and north are not given. Keep out of direct sun.', { site: { latitude: null } }],
    ['North and the times of the test are not given. Keep out of direct sun.', { visit: { start: null } }],
    [
      'The times of the test are not given. Keep out of direct sun.',
      { site: { northAnswered: true }, visit: { start: null, end: null } },
    ],
    ['North and the time of the pick-up are not given. Keep out of direct sun.', { visit: { end: null } }],
    [
      'The time of the pick-up is not given. Keep out of direct sun.',
      { site: { northAnswered: true }, visit: { end: null } },
    ],
  ])('"%s"', (reason, { site, visit }) => {
    const plan = den({ site: { northAnswered: false, ...site }, ...(visit ? { visit } : {}) });
    expect(rowsAt(plan, FAR)).toMatchObject([{ notRun: true, reason }]);
  });

  it('needs no north where no glass or no exterior opening is drawn', () => {
    const site = { northAnswered: false };
    expect(rowsAt(den({ site, window: { kind: 'door' } }), SUNLIT)).toMatchObject([{ verdict: 'clear' }]);
    const [row] = rowsAt(den({ site: { ...site, latitude: null }, window: { kind: 'door' } }), SUNLIT);
    expect(row?.reason).toBe('The location of the house is not given. Keep out of direct sun.');
    const plan = den({ site });
    const closed = { ...plan, levels: [{ ...levelOf(plan), openings: [] }] };
    expect(rowsAt(closed, SUNLIT)).toMatchObject([{ verdict: 'clear', reason: 'No exterior opening is drawn.' }]);
  });

  it('runs as before where north was answered, in words or by a file without the key', () => {
    const without = rowsAt(den(), NEAR);
    expect(rowsAt(den({ site: { northAnswered: true } }), NEAR)).toEqual(without);
    expect(without).toMatchObject([{ verdict: 'blocked', notRun: false }]);
  });

  it('a door that may have glass is not run without a place, and clear with one', () => {
    const door = { kind: 'door' as const };
    expect(rowsAt(den({ window: door, site: { latitude: null } }), FAR)).toMatchObject([{ notRun: true }]);
    expect(rowsAt(den({ window: door }), SUNLIT)).toMatchObject([{ verdict: 'clear', measured: null }]);
    expect(rowsAt(den({ window: { ...door, glazed: true } }), SUNLIT)).toMatchObject([{ verdict: 'blocked' }]);
  });

  it('counts whatever a person says, once it is worked out', () => {
    expect(rowsAt(den({ more: { lookedFor: ['direct-sun'] } }), SUNLIT)).toMatchObject([{ verdict: 'blocked' }]);
  });

  it('is clear where a cover stays closed', () => {
    expect(rowsAt(den({ window: { shade: 'covered' } }), SUNLIT)).toMatchObject([{ verdict: 'clear', measured: null }]);
  });

  it.each<[string, House]>([
    ['the end is before the start', { visit: { end: '2003-10-16T12:30:30-07:00' } }],
    ['nobody knows where the sun stood', { visit: { start: '1910-01-01T00:00:00Z', end: '1910-01-03T00:00:00Z' } }],
  ])('is undecided, and counts, where %s', (_, house) => {
    const plan = den(house);
    expect(rowsAt(plan, FAR)).toMatchObject([{ verdict: 'unknown', notRun: false, measured: null }]);
    expect(checkDetector(plan, buildLevel(levelOf(plan)), detectorAt(FAR)).verdict).toBe('unknown');
  });

  it('is undecided while it is worked out, whatever a person says', () => {
    setSunSource(() => null);
    const plan = den({ more: { lookedFor: ['direct-sun'] }, thickness: 201 });
    expect(rowsAt(plan, FAR)).toMatchObject([{ verdict: 'unknown', notRun: false }]);
    setSunSource(sweptArea);
    expect(rowsAt(plan, FAR)).toMatchObject([{ verdict: 'clear', subject: 'glass' }]);
  });

  it('says where the light comes from', () => {
    const plan = den();
    const words = [SUNLIT, NEAR].map((at) => describeCheck(rowsAt(plan, at)[0] as Check, plan, levelOf(plan)));
    expect(words[0]).toBe('In the sun through the window, needs 4 ft.');
    expect(words[1]).toMatch(/^1 ft .* from the sun through the window, needs 4 ft\.$/);
  });
});

describe('a list without a distance', () => {
  const plan = den();
  const list: Plan = { ...plan, protocol: { ...plan.protocol, profile: 'illinois-422-130' } };
  it('keeps the rim out of the sun, and no farther', () => {
    expect(rowsAt(list, SUNLIT)).toMatchObject([{ verdict: 'blocked', required: 0 }]);
    expect(rowsAt(list, [2500, 1550])).toMatchObject([{ verdict: 'clear', required: 0 }]);
    expect(rowsAt(list, [2500, 1460])).toMatchObject([{ verdict: 'blocked', required: 0 }]);
  });
});

describe('what follows from the row', () => {
  it('the best place keeps clear of the sun, and the field leaves as much there as the check', () => {
    const plan = den();
    const model = buildLevel(levelOf(plan));
    const [best] = bestSpots(plan, model, PROBE);
    expect(rowsAt(plan, best?.at as XY)).toMatchObject([{ verdict: 'clear' }]);
    const covered = den({ window: { shade: 'covered' } });
    const [other] = bestSpots(covered, buildLevel(levelOf(covered)), PROBE);
    expect(other?.margin).toBeGreaterThan((best?.margin ?? 0) + 100);
  });

  it('nothing of it is left once north is not answered, of one model and back', () => {
    const plan = den();
    const open = { ...plan, site: { ...plan.site, northAnswered: false } };
    const model = buildLevel(levelOf(plan));
    const seen = (one: Plan) => ({
      margin: marginField(one, model, PROBE).margin(...NEAR),
      isSunZone: levelRegion(one, model, PROBE).zones.some(({ rule }) => rule === 'direct-sun'),
      best: bestSpots(one, model, PROBE)[0]?.margin,
      isSunHeight: heightsAt(one, model, PROBE, NEAR).some(({ below, above }) =>
        [below.kind, above.kind].includes('sun'),
      ),
    });
    const first = seen(plan);
    expect(first).toMatchObject({ isSunZone: true });
    const second = seen(open);
    expect(second).toMatchObject({ isSunZone: false, isSunHeight: false });
    expect(second.margin).toBeGreaterThan(first.margin + 100);
    expect(second.best).toBeGreaterThan((first.best ?? 0) + 100);
    expect(seen(plan)).toEqual(first);
  });

  it('heights leave out those at which the sun is near', () => {
    const plan = den({ window: { bottom: 1600, top: 2100 } });
    const intervals = heightsAt(plan, buildLevel(levelOf(plan)), PROBE, NEAR);
    expect(intervals.some(({ below, above }) => below.kind === 'sun' || above.kind === 'sun')).toBe(true);
    for (const { from, to } of intervals)
      for (const base of [from, (from + to) / 2, to])
        expect(rowsAt(plan, NEAR, base).every(({ verdict }) => verdict !== 'blocked')).toBe(true);
  });

  it(`the region and the field at ${POINTS} points are what the check says`, { timeout: 600_000 }, () => {
    const faults: unknown[] = [];
    for (let seed = 1, left = POINTS; left > 0; seed++) {
      const random = seededRandom(seed);
      const house = sunnyHouse(random);
      const plan: Plan = { ...house, levels: [{ ...levelOf(house), rooms }] };
      const model = buildLevel(levelOf(plan));
      const region = levelRegion(plan, model, PROBE);
      const field = marginField(plan, model, PROBE);
      const extent = model.rooms.flatMap(({ centerRings }) => centerRings.flat());
      const [xs, ys] = [extent.map(([x]) => x), extent.map(([, y]) => y)];
      for (let n = 0; n < 200 && left > 0; n++, left--) {
        const at: XY = [
          Math.min(...xs) + random() * (Math.max(...xs) - Math.min(...xs)),
          Math.min(...ys) + random() * (Math.max(...ys) - Math.min(...ys)),
        ];
        const { checks } = checkDetector(plan, model, detectorAt(at));
        const isBlocked = checks.some(({ verdict, notRun }) => verdict === 'blocked' && !notRun);
        const isWhite = region.rooms.some(({ rings, decided }) => decided && arcRingsContain(rings, at));
        const undecided = checks.some(({ rule, verdict }) => rule === 'room-use' && verdict === 'unknown');
        const inWall = checks.some(({ rule, verdict }) => rule === 'room-use' && verdict === 'blocked');
        if (isWhite && isBlocked) faults.push([seed, at, 'white but blocked']);
        if (!isWhite && !isBlocked && !undecided) faults.push([seed, at, 'shaded but not blocked']);
        const margins = checks.flatMap(({ rule, margin, bound }) =>
          margin !== null && bound === 'least' && !['height-band', 'ceiling'].includes(rule) ? [margin] : [],
        );
        const least = Math.min(...margins);
        if (!inWall && Math.abs(field.margin(...at) - least) > 1e-6)
          faults.push([seed, at, field.margin(...at), least]);
      }
    }
    expect(faults).toEqual([]);
  });
});
