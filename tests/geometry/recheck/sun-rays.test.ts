import { describe, expect, it } from 'vitest';
import type { Level, Mm, Opening, Plan, Wall, XY } from '../../../geometry/plan/model.ts';
import { sunPlace } from '../../../geometry/recheck/sun-place.ts';
import { exposureOf, nearestSun } from '../../../geometry/recheck/sun-rays.ts';
import { wallLayout } from '../../../geometry/recheck/wall-layout.ts';
import { HEIGHTS, type House, houseOf, INCH } from '../../helpers/sun-room.ts';

/*
 * The second computation of direct sun, checked by hand: one instant, the sun at 39.89° straight in front of a window 84 in high in a wall of
 * 200 mm, the detector from 30 to 31 in. The position of the sun is computed by the same theory, which has its own tests.
 */

const SITE = { latitude: 39.742476, longitude: -105.1786 };
const NOON = Date.parse('2003-10-17T12:30:30-07:00');
const { azimuth, altitude } = sunPlace(NOON, SITE.latitude, SITE.longitude);

const [LOW, HIGH] = [HEIGHTS.base, HEIGHTS.base + HEIGHTS.tall];
const [HEAD, THICKNESS, DISC] = [84 * INCH, 200, 0.267];
/** How far light extends while it falls by a height: farthest from the lower edge of the disc, least far from the upper edge. */
const longest = (fall: Mm): Mm => fall / Math.tan(((altitude - DISC) * Math.PI) / 180);
const shortest = (fall: Mm): Mm => fall / Math.tan(((altitude + DISC) * Math.PI) / 180);
const FAR = longest(HEAD - LOW) - THICKNESS;

/** How far sideways the edge of the disc shines over a distance, mm. */
const aside = (way: Mm): Mm => way * Math.tan(((DISC / Math.cos((altitude * Math.PI) / 180)) * Math.PI) / 180);

/** Tolerance, mm, because rays come from only a few places on the edge of the disc. */
const WITHIN = 0.3;

function distanceTo(at: XY, house: House = {}): Mm {
  const plan: Plan = houseOf({ ...house, site: { north: -azimuth, ...house.site } });
  const layout = wallLayout(plan.levels[0] as Level);
  const hole = layout.holes.find(({ opening }) => opening.id === 'glass');
  const exposure = exposureOf(plan);
  if (!hole || !exposure) throw new Error('a house of these tests has a window, a place and times');
  return nearestSun(layout, [hole], exposure, at, [LOW, HIGH])?.distance ?? Number.POSITIVE_INFINITY;
}

const about = (found: Mm, expected: Mm) => expect(Math.abs(found - expected), `${found}`).toBeLessThan(WITHIN);

const across = (y: Mm, thickness: Mm, id = 'p'): Wall => ({ id, from: [0, y], to: [6000, y], thickness, side: 'auto' });
const hatch = (bottom: Mm, top: Mm, wall = 'p'): Opening => ({
  ...{ id: `d-${wall}`, wall, kind: 'passage' },
  ...{ offset: 1800, width: 1400, bottom, top },
});

describe('light through a window alone', () => {
  it('reaches as far as it falls from the head, less the depth of the wall', () =>
    about(distanceTo([2500, 4000]), 4000 - FAR));

  it('is farthest straight ahead, because the disc is lowest in its middle', () => {
    about(distanceTo([1994, FAR + 10]), Math.hypot(6, 10));
    about(distanceTo([3006, FAR + 10]), Math.hypot(6, 10));
  });

  it('is as wide as the window', () => {
    about(distanceTo([1700, 500]), 300 - aside(500));
    about(distanceTo([3250, 500]), 250 - aside(500));
  });

  it('begins where it has fallen below the sill', () =>
    about(distanceTo([2500, 0], { window: { bottom: 40 * INCH } }), shortest(40 * INCH - HIGH)));

  it('is on the spot inside', () => expect(distanceTo([2517, 700])).toBeLessThan(50));

  // Rays are 100 mm apart, so no lit spot is farther than 50 from one.
  it('is on every spot that a window of 3 m lights', () => {
    for (let x = 1600; x <= 4400; x += 200)
      for (let y = 200; y <= 1200; y += 200)
        expect(distanceTo([x, y], { window: { offset: 1600, width: 3000 } }), `${x} ${y}`).toBeLessThan(51);
  });

  it('ends at the edge of an overhang', () => {
    const shade = { overhang: { depth: 600, above: 100 } };
    about(distanceTo([2500, 4000], { window: { shade } }), 4000 - (longest(HEAD + 100 - LOW) - THICKNESS - 600));
  });

  it.each<[string, House, boolean]>([
    ['something outside that is higher than the sun', { window: { shade: { obstruction: 45 } } }, false],
    ['something outside that is lower', { window: { shade: { obstruction: 39 } } }, true],
    ['a horizon above the sun', { site: { horizon: 45 } }, false],
    ['a horizon below it', { site: { horizon: 39 } }, true],
    ['a cover', { window: { shade: 'covered' } }, false],
    ['a window well', { window: { shade: 'well' } }, false],
    ['the sun behind the house', { site: { north: 180 - azimuth } }, false],
    ['the sun along the wall', { site: { north: 90 - azimuth } }, false],
    ['the head below the detector', { window: { bottom: 100, top: 700 } }, false],
  ])('%s: light comes in or not', (_, house, comesIn) => {
    expect(distanceTo([2500, 500], house) < 50).toBe(comesIn);
    if (!comesIn) expect(distanceTo([2500, 500], house)).toBe(Number.POSITIVE_INFINITY);
  });

  it.each([
    ['at the horizon of the site exactly', 0, true],
    ['below it', 1e-9, false],
  ])('%s: the sun counts or not', (_, over, counts) => {
    expect(distanceTo([2500, 500], { site: { horizon: altitude + over } }) < 50).toBe(counts);
    const shade = { obstruction: altitude + over };
    expect(distanceTo([2500, 500], { window: { shade } }) < 50).toBe(counts);
  });

  it('counts under half a degree where the horizon of the site is lower still', () => {
    let evening = NOON;
    while (sunPlace(evening, SITE.latitude, SITE.longitude).altitude > 0.5) evening += 60_000;
    const instant = new Date(evening).toISOString();
    const north = -sunPlace(evening, SITE.latitude, SITE.longitude).azimuth;
    const house = { site: { horizon: 0, north }, visit: { start: instant, end: instant } };
    expect(distanceTo([2500, 4000], house)).toBeLessThan(50);
  });

  it('without a horizon of its own a site has one of 3°', () => {
    const { horizon } = exposureOf(houseOf()) ?? {};
    expect(horizon).toBe(3);
  });
});

describe('a floor behind the window', () => {
  /** Walls that cover the window except 110 mm at one of the tested places: rays are 100 mm apart. */
  const covered = (from: Mm, to: Mm, id: string): Wall => ({
    ...{ id, from: [(from + to) / 2, 0], to: [(from + to) / 2, 5000] },
    ...{ thickness: to - from, side: 'auto' },
  });

  it.each([0.02, 0.25, 0.5, 0.75, 0.98])('is found where the window is free at %d of its width alone', (share) => {
    const middle = 2000 + share * 1000;
    const walls = [covered(50, middle - 55, 'left'), covered(middle + 55, 5950, 'right')];
    expect(distanceTo([middle, 300], { more: { walls } })).toBeLessThan(56);
  });
});

describe('a thicker wall that runs along a part of the window', () => {
  const along = (to: Mm): House => ({
    more: { walls: [{ id: 't', from: [-100, -100], to: [to, -100], thickness: 600, side: 'auto' }] },
  });

  it('leaves the faces of the thinner wall beside it', () => about(distanceTo([2800, 4000], along(2500)), 4000 - FAR));

  it('stops the light that its own faces stop', () =>
    about(distanceTo([2500, 4000], along(5000)), 4000 - (longest(HEAD - LOW) - 600 + 200)));
});

describe('inner walls', () => {
  const doorway = hatch(0, HEAD);

  it.each([100, 0])('of %d mm end the light', (thickness) =>
    about(distanceTo([2500, 3000], { more: { walls: [across(1000, thickness)] } }), 3000 - 1000 + thickness / 2),
  );

  it.each([
    ['near one first', ['p', 'q']],
    ['far one first', ['q', 'p']],
  ] as const)('of two that overlap the nearer face ends it, the %s in the file', (_, order) => {
    const both = { p: across(1000, 100), q: across(1040, 100, 'q') };
    about(distanceTo([2500, 3000], { more: { walls: order.map((id) => both[id]) } }), 3000 - 950);
  });

  it.each([
    ['near one first', ['p', 'q']],
    ['far one first', ['q', 'p']],
  ] as const)('of two, the first open, the second ends it, the %s in the file', (_, order) => {
    const both = { p: across(500, 100), q: across(1200, 100, 'q') };
    const more = { walls: order.map((id) => both[id]), openings: [doorway] };
    about(distanceTo([2500, 3000], { more }), 3000 - 1150);
  });

  it('let it through at an open door, and light lies in the doorway too', () => {
    const more = { walls: [across(800, 400)], openings: [doorway] };
    about(distanceTo([2500, 4000], { more }), 4000 - FAR);
    expect(distanceTo([2500, 800], { more })).toBeLessThan(50);
    about(distanceTo([1700, 800], { more }), 300 - aside(800));
  });

  it('an open door before the place where light has fallen below the sill gives none sooner', () => {
    const more = { walls: [across(500, 100)], openings: [doorway] };
    about(distanceTo([2500, 400], { window: { bottom: 60 * INCH }, more }), shortest(60 * INCH - HIGH) - 400);
  });

  it('a hatch lets light through that has not fallen below its bottom, from behind it on', () => {
    const more = { walls: [across(300, 100)], openings: [hatch(1000, HEAD)] };
    // In front of the wall there is light up to its face, at y = 250.
    const begins = 350 + shortest(1000 - HIGH);
    about(distanceTo([2500, begins - 20], { more }), 20);
    about(distanceTo([2500, 500], { more }), Math.min(250, begins - 500));
  });

  it('a hatch whose bottom is at the top of the detector is lit within the wall', () => {
    const more = { walls: [across(800, 400)], openings: [hatch(HIGH, HEAD)] };
    expect(distanceTo([2500, 800], { more })).toBeLessThan(50);
    // Slightly higher, the wall blocks it, from y = 600 to 1000.
    about(distanceTo([2500, 700], { more: { ...more, openings: [hatch(HIGH + 0.01, HEAD)] } }), 100);
  });

  it('a low door cuts off what is higher', () => {
    const more = { walls: [across(300, 100)], openings: [hatch(0, 1000)] };
    about(distanceTo([2500, 2500], { more }), 2500 - (250 + longest(1000 - LOW)));
  });

  it('a slit lower than light falls within the wall lets none through', () => {
    const more = { walls: [across(300, 400)], openings: [hatch(1200, 1250)] };
    about(distanceTo([2500, 1000], { more }), 1000 - 100);
  });

  it('none comes from a window to a wall outdoors', () => {
    const free: Wall = { id: 'a', from: [1500, -2000], to: [3500, -2000], thickness: 200, side: 'auto' };
    expect(distanceTo([2500, 500], { more: { walls: [free] } })).toBe(Number.POSITIVE_INFINITY);
    const half = { ...free, from: [2500, -2000] as const };
    // Light past the end of the wall spreads sideways, as far as rays 100 mm apart show it.
    const beside = distanceTo([2900, 500], { more: { walls: [half] } });
    expect(beside).toBeGreaterThan(400 - aside(2600) - WITHIN);
    expect(beside).toBeLessThan(400);
  });
});

describe('light aslant, in a house that is turned', () => {
  const quarters = Array.from({ length: 8 }, (_, i) => (i * Math.PI) / 4);
  const radians = (degrees: number) => (degrees * Math.PI) / 180;
  /** The middle of the disc and places of its edge: how far sideways of the window's axis they shine, and the distance for a fall of 1. */
  const beams = (slant: number) =>
    [[0, 0], ...quarters.map((turn) => [Math.cos(turn), Math.sin(turn)])].map(([across = 0, up = 0]) => ({
      slant: radians(slant + (across * DISC) / Math.cos(radians(altitude))),
      way: 1 / Math.tan(radians(altitude + up * DISC)),
    }));
  const cases = [-50, -20, 35, 60].flatMap((slant) => [0, 0.7, 4].map((turn) => ({ slant, turn })));
  const moved =
    (turn: number) =>
    (p: XY): XY => [
      p[0] * Math.cos(turn) - p[1] * Math.sin(turn) + 900,
      p[0] * Math.sin(turn) + p[1] * Math.cos(turn) - 300,
    ];
  const distance = (slant: number, turn: number, at: XY, house: House = {}) =>
    distanceTo(moved(turn)(at), {
      ...house,
      move: moved(turn),
      // Light moves toward larger x when the sun is at smaller x.
      site: { north: -azimuth - slant + (turn * 180) / Math.PI },
    });

  /** Expects 40 mm to the end of the light, on which two rays are at most 100 mm apart. */
  const straightAhead = (found: Mm) => {
    expect(found).toBeGreaterThan(40 - WITHIN);
    expect(found).toBeLessThan(Math.hypot(40, 51));
  };

  it.each(cases)('$slant°, house at $turn: it ends where it has fallen from the head', ({ slant, turn }) => {
    const ends = beams(slant).map((beam) => (HEAD - LOW) * beam.way * Math.cos(beam.slant) - THICKNESS);
    const [y, x] = [Math.max(...ends), 2500 + THICKNESS * Math.tan(radians(slant)) * 0.5];
    straightAhead(distance(slant, turn, [x + y * Math.tan(radians(slant)), y + 40]));
  });

  it.each(cases)('$slant°, house at $turn: it ends at the edge of an overhang', ({ slant, turn }) => {
    const shade = { overhang: { depth: 400, above: 100 } };
    const ends = beams(slant).map((beam) => (HEAD + 100 - LOW) * beam.way * Math.cos(beam.slant) - THICKNESS - 400);
    const [y, x] = [Math.max(...ends), 2500 + THICKNESS * Math.tan(radians(slant)) * 0.5];
    const at: XY = [x + y * Math.tan(radians(slant)), y + 40];
    straightAhead(distance(slant, turn, at, { window: { shade, bottom: 0 } }));
  });

  it.each(cases)('$slant°, house at $turn: both jambs cut it off through the whole wall', ({ slant, turn }) => {
    const y = 600;
    const sides = beams(slant).map((beam) => {
      const [tangent, cosine] = [Math.tan(beam.slant), Math.cos(beam.slant)];
      const [left, right] = [2000 + Math.max(0, THICKNESS * tangent), 3000 + Math.min(0, THICKNESS * tangent)];
      return { left: left + y * tangent, right: right + y * tangent, cosine };
    });
    const middle = y * Math.tan(radians(slant));
    const [left, right] = [2000 + middle - 100, 3000 + middle + 100];
    const shallow = { bottom: 0, top: 3 * HEAD };
    about(
      distance(slant, turn, [left, y], { window: shallow }),
      Math.min(...sides.map((side) => (side.left - left) * side.cosine)),
    );
    about(
      distance(slant, turn, [right, y], { window: shallow }),
      Math.min(...sides.map((side) => (right - side.right) * side.cosine)),
    );
  });
});

describe('a whole exposure', () => {
  it('is what the single instants are together, whatever is looked at first', () => {
    const [start, minutes] = [NOON - 90 * 60_000, 180];
    const iso = (at: number) => new Date(at).toISOString();
    const visit = { start: iso(start), end: iso(start + minutes * 60_000) };
    const door: Opening = { ...hatch(0, 2032), offset: 1500 };
    const houses: House[] = [
      {},
      { window: { bottom: 50 * INCH }, more: { walls: [across(1100, 100)], openings: [door] } },
    ];
    const places: XY[] = [
      [700, 900],
      [1500, 400],
      [2450, 1600],
      [3900, 2500],
      [5200, 300],
    ];
    for (const house of houses)
      for (const at of places) {
        const each = Array.from({ length: minutes / 2 + 1 }, (_, i) => iso(start + i * 120_000));
        const alone = each.map((instant) => distanceTo(at, { ...house, visit: { start: instant, end: instant } }));
        expect(new Set(alone).size).toBeGreaterThan(20);
        expect(distanceTo(at, { ...house, visit })).toBeCloseTo(Math.min(...alone), 6);
      }
  });

  it('looks every two minutes, and at its end', () => {
    // The sun rises over the horizon of the site in the last minute.
    const iso = (at: number) => new Date(at).toISOString();
    const { altitude: last } = sunPlace(NOON - 3_600_000, SITE.latitude, SITE.longitude);
    const visit = { start: iso(NOON - 3_600_000 - 601_000), end: iso(NOON - 3_600_000) };
    expect(distanceTo([2500, 300], { visit, site: { horizon: last - 1e-6 } })).toBeLessThan(500);
    expect(distanceTo([2500, 300], { visit, site: { horizon: last + 1e-6 } })).toBe(Number.POSITIVE_INFINITY);
  });
});
