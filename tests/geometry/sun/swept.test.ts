import { describe, expect, it } from 'vitest';
import { buildLevel } from '../../../geometry/level/build-level.ts';
import type { Level, Mm, Opening, Plan, Wall, XY } from '../../../geometry/plan/model.ts';
import { bodyDistance, ringBody } from '../../../geometry/plane/body.ts';
import { signedArea } from '../../../geometry/plane/ring.ts';
import { sunPosition } from '../../../geometry/sun/position.ts';
import type { Swept } from '../../../geometry/sun/sun-floor.ts';
import { sweptArea } from '../../../geometry/sun/swept.ts';
import { type SunTimes, sunTimes } from '../../../geometry/sun/times.ts';
import { altitude, azimuth, FACING, HEIGHTS, type House, houseOf, INCH } from '../../helpers/sun-room.ts';

const tangent = (degrees: number) => Math.tan((degrees * Math.PI) / 180);

function sweptOf(plan: Plan, heights = HEIGHTS): Swept {
  const times = sunTimes(plan);
  if (!times) throw new Error('the place or the times are missing');
  return sweptArea(buildLevel(plan.levels[0] as Level), times, heights);
}

function ringsOf(plan: Plan, heights = HEIGHTS): (readonly XY[])[] {
  const swept = sweptOf(plan, heights);
  if (swept.state !== 'known') throw new Error(swept.reason);
  return swept.areas.flatMap(({ rings }) => rings);
}

const areaOf = (plan: Plan) => ringsOf(plan).reduce((sum, ring) => sum + Math.abs(signedArea(ring)), 0);
const depths = (plan: Plan) => ringsOf(plan).flatMap((ring) => ring.map(([, y]) => y));
const isIn = (plan: Plan, [x, y]: XY) => ringsOf(plan).some((ring) => bodyDistance(ringBody(ring), x, y) === 0);
const days = { start: '2026-03-07T18:00:00-05:00', end: '2026-03-11T18:00:00-05:00' };

describe('a single instant, worked by hand', () => {
  // 54 in / tan 39.89° = 64.6 in for the middle of the disc; its lower edge reaches a little farther.
  it.each([
    [0, 54 * INCH],
    [203.2, 54 * INCH],
  ])('a wall of %d mm: the head lets light in as far as the lower edge of the disc does', (thickness, drop) => {
    const far = Math.max(...depths(houseOf({ thickness })));
    expect((54 * INCH) / tangent(altitude) / INCH).toBeCloseTo(64.6, 1);
    expect(far).toBeGreaterThanOrEqual(drop / tangent(altitude - 0.267) - thickness);
    expect(far).toBeLessThan(drop / tangent(altitude - 0.267) - thickness + 10);
  });

  it('the sill lets light in from where the upper edge of the disc shines over it', () => {
    const near = Math.min(...depths(houseOf({ window: { bottom: 40 * INCH } })));
    const drop = 9 * INCH;
    expect(near).toBeLessThanOrEqual(drop / tangent(altitude + 0.267));
    expect(near).toBeGreaterThan(drop / tangent(altitude + 0.267) - 10);
  });

  it('an overhang stops what comes over its edge', () => {
    const shade = { overhang: { depth: 600, above: 100 } };
    const far = Math.max(...depths(houseOf({ window: { shade } })));
    const exact = (54 * INCH + 100) / tangent(altitude - 0.267) - 200 - 600;
    expect(far).toBeGreaterThanOrEqual(exact);
    expect(far).toBeLessThan(exact + 10);
  });

  it('under an overhang and over the sill of a hatch, only light low enough for both reaches the floor behind', () => {
    // On the equator at an equinox the sun rises straight up before a window to the east, through every altitude.
    const site = { latitude: 0, longitude: 0, north: 270 };
    const visit = { start: '2026-03-20T05:00:00Z', end: '2026-03-20T12:00:00Z' };
    const partition = { id: 'p', from: [-100, 1500], to: [6100, 1500], thickness: 100, side: 'auto' } as const;
    const hatch = { id: 'h', wall: 'p', kind: 'window', offset: 100, width: 6000, bottom: 1200, top: 2100 } as const;
    const shade = { overhang: { depth: 1000, above: 0 } };
    const house = (window: Partial<Opening>) =>
      houseOf({ site, visit, window, more: { walls: [partition], openings: [hatch] } });
    // From the edge of the overhang, 1200 mm before the inner face, to the sill at the far face of the partition.
    const run = (1550 + 1200) / (84 * INCH - 1200);
    const exact = 1550 + run * (1200 - 31 * INCH);
    const behind = depths(house({ shade })).filter((y) => y > 1551);
    expect(Math.min(...behind)).toBeLessThanOrEqual(exact);
    expect(Math.min(...behind)).toBeGreaterThan(exact - 75);
    expect(Math.min(...depths(house({})).filter((y) => y > 1551))).toBeLessThan(exact - 400);
  });

  it('is mirrored with the house when the sun stands straight before the window', () => {
    const mirrored = houseOf({ move: ([x, y]) => [6000 - x, y], window: { width: 700 } });
    const plain = houseOf({ window: { width: 700 } });
    expect(areaOf(mirrored)).toBeCloseTo(areaOf(plain), -2);
    const ends = (plan: Plan) => {
      const xs = ringsOf(plan).flatMap((ring) => ring.map(([x]) => x));
      return [Math.min(...xs), Math.max(...xs)] as const;
    };
    // A column of the sky is 4 mm wide here.
    const [[left, right], [mirroredLeft, mirroredRight]] = [ends(plain), ends(mirrored)];
    expect(Math.abs(6000 - right - mirroredLeft)).toBeLessThan(4);
    expect(Math.abs(6000 - left - mirroredRight)).toBeLessThan(4);
  });

  describe('the sun comes round the house, at some instant along the wall', () => {
    const visit = { start: '2026-03-09T12:00:00-04:00', end: '2026-03-09T18:00:00-04:00' };
    const house = (side: number, bottom: Mm, more: Partial<Level> = {}) =>
      houseOf({ visit, thickness: 0, window: { bottom }, site: { north: side * 90 - azimuth }, more });
    const nearestTo = (plan: Plan, at: XY) =>
      Math.min(...ringsOf(plan).map((ring) => bodyDistance(ringBody(ring), ...at)));

    it.each([
      [-1, 2000],
      [1, 3000],
    ])('side %d: its light begins where it has fallen below the sill', (side, jamb) => {
      const { start, end, latitude, longitude } = sunTimes(house(side, 60 * INCH)) as SunTimes;
      const minutes = Array.from({ length: (end - start) / 60_000 }, (_, i) => start + i * 60_000);
      const highest = Math.max(...minutes.map((at) => sunPosition(at, latitude, longitude).altitude));
      const exact = (29 * INCH) / tangent(highest + 0.267);
      const near = nearestTo(house(side, 60 * INCH), [jamb, 0]);
      expect(near).toBeGreaterThan(exact - 75);
      expect(near).toBeLessThan(exact + 75);
    });

    it.each([
      [-1, 2550],
      [1, 2450],
    ])('side %d: none gets past the end of a wall that stands at the window', (side, corner) => {
      const walls: Wall[] = [{ id: 'p', from: [2500, 0], to: [2500, 5000], thickness: 100, side: 'auto' }];
      // 11 in from the sill down to the detector: the light extends as far along the floor, and is 100 mm away behind the wall.
      expect(nearestTo(house(side, 42 * INCH, { walls }), [corner, 0])).toBeGreaterThan(99);
    });
  });

  it('is as wide as the opening, and wider by the disc alone', () => {
    const xs = ringsOf(houseOf()).flatMap((ring) => ring.map(([x]) => x));
    expect(Math.min(...xs)).toBeLessThanOrEqual(2000);
    expect(Math.min(...xs)).toBeGreaterThan(1980);
    expect(Math.max(...xs)).toBeLessThan(3020);
  });
});

describe('two openings whose walls lie in each other', () => {
  const door = (wall: string, change: Partial<Opening>): Opening => {
    return { id: `door-${wall}`, wall, kind: 'door', offset: 100, width: 1000, bottom: 0, top: 2300, ...change };
  };
  const inner = (id: string, from: XY, to: XY): Wall => ({ id, from, to, thickness: 100, side: 'auto' });

  describe('a window that opens into a wall at a small angle, at its door', () => {
    // Between 2000 and 2250 mm the wall from the corner covers the inner face: there is no floor between the window and the door.
    const house = (change: Partial<Opening> = {}) =>
      houseOf({
        window: { offset: 2100, width: 250 },
        more: { walls: [inner('p', [1800, -100], [6100, 1300])], openings: [door('p', change)] },
      });

    it('lights the floor behind the door', () => {
      expect(isIn(house(), [2125, 300])).toBe(true);
      expect(isIn(house(), [2125, 1200])).toBe(true);
    });

    it('as far as the head of the door lets it', () => {
      // A fall of 1500 - 762 mm from the side of the wall, 58 mm into the room: 738 / tan 39.6° + 58 = 949.
      expect(isIn(house({ top: 1500 }), [2125, 900])).toBe(true);
      expect(isIn(house({ top: 1500 }), [2125, 1000])).toBe(false);
    });

    it('and none beside the door', () => {
      expect(ringsOf(house({ offset: 2000 }))).toEqual([]);
    });
  });

  it('where two walls cross in their doors, the floor behind both is lit', () => {
    const walls = [inner('p', [-100, 400], [6100, 1000]), inner('q', [-100, 1000], [6100, 400])];
    const openings = walls.map(({ id }) => door(id, { offset: 2000, width: 2000 }));
    // At 2900 mm they overlap from 659 to 740 mm: light leaves one of them inside the other.
    expect(isIn(houseOf({ more: { walls, openings } }), [2900, 1000])).toBe(true);
    expect(isIn(houseOf({ more: { walls, openings: openings.slice(1) } }), [2900, 1000])).toBe(false);
  });
});

describe('what lets no sun in', () => {
  it.each<[string, House]>([
    ['a cover', { window: { shade: 'covered' } }],
    ['a window well', { window: { shade: 'well' } }],
    ['something outside that is higher than the sun', { window: { shade: { obstruction: 45 } } }],
    ['a door', { window: { kind: 'door' } }],
    ['no glass', { window: { glazed: false } }],
    ['a head below the detector', { window: { bottom: 100, top: 700 } }],
    ['a horizon above the sun', { site: { horizon: 45 } }],
    ['the sun behind the house', { site: { north: 180 - azimuth } }],
    ['the sun along the wall', { site: { north: 90 - azimuth } }],
  ])('%s', (_, house) => {
    expect(ringsOf(houseOf(house))).toEqual([]);
  });

  it.each<[string, House]>([
    ['a passage', { window: { kind: 'passage' } }],
    ['a door of glass', { window: { kind: 'door', glazed: true } }],
    ['something outside that is lower than the sun', { window: { shade: { obstruction: 39 } } }],
  ])('%s lets it in', (_, house) => {
    expect(areaOf(houseOf(house))).toBeGreaterThan(1e6);
  });
});

describe('inner walls', () => {
  const wall: Wall = { id: 'p', from: [0, 1000], to: [6000, 1000], thickness: 100, side: 'auto' };
  const door: Opening = {
    id: 'd',
    wall: 'p',
    kind: 'door',
    offset: 2200,
    width: 400,
    bottom: 0,
    top: 2032,
  };
  const through: XY = [2400, 1300];

  it('stop the light', () => {
    expect(Math.max(...depths(houseOf({ more: { walls: [wall] } })))).toBeLessThan(950.1);
  });

  it('let it through at a door, and nowhere else', () => {
    const plan = houseOf({ more: { walls: [wall], openings: [door] } });
    expect(isIn(plan, through)).toBe(true);
    expect(isIn(plan, [2100, 1300])).toBe(false);
    expect(isIn(plan, [2750, 1300])).toBe(false);
  });

  it('let none through a hatch that is too low or too high', () => {
    for (const heights of [
      { bottom: 0, top: 700 },
      { bottom: 1900, top: 2100 },
    ]) {
      const plan = houseOf({ more: { walls: [wall], openings: [{ ...door, ...heights }] } });
      expect(isIn(plan, through)).toBe(false);
    }
  });

  it.each([
    ['below', { bottom: 0, top: 700 }, false],
    ['above', { bottom: 1000, top: 2100 }, true],
  ])('a hatch %s the detector is wall at its height, and is not lit there', (_, heights, isLitBehind) => {
    const deep = { ...wall, thickness: 300 };
    const plan = houseOf({ more: { walls: [deep], openings: [{ ...door, ...heights }] } });
    expect(isIn(plan, [2400, 840])).toBe(true);
    expect(isIn(plan, [2400, 900])).toBe(false);
    expect(isIn(plan, [2400, 1140])).toBe(false);
    expect(isIn(plan, [2400, 1420])).toBe(isLitBehind);
  });
});

describe('an exposure of four days', () => {
  it('is the same for a plan that is moved and turned', () => {
    const base = areaOf(houseOf({ visit: days }));
    const turn = 0.7;
    const move = ([x, y]: XY): XY => [
      x * Math.cos(turn) - y * Math.sin(turn) + 30_000,
      x * Math.sin(turn) + y * Math.cos(turn) - 7000,
    ];
    const north = FACING.north + (turn * 180) / Math.PI;
    expect(Math.abs(areaOf(houseOf({ visit: days, move, site: { north } })) / base - 1)).toBeLessThan(0.01);
  });

  it('is symmetric for a window to the south at an equinox', () => {
    const whole = { start: '2026-03-20T00:00:00Z', end: '2026-03-21T00:00:00Z' };
    const site = { latitude: 40, longitude: 0, north: 180 };
    const bodies = ringsOf(houseOf({ site, visit: whole, window: { offset: 2600 } })).map(ringBody);
    const share = (side: number) => {
      let count = 0;
      for (let x = 10; x < 3000; x += 20)
        for (let y = 10; y < 5000; y += 20)
          if (bodies.some((body) => bodyDistance(body, 3000 + side * x, y) === 0)) count++;
      return count;
    };
    expect(share(1)).toBeGreaterThan(100);
    expect(Math.abs(share(1) / share(-1) - 1)).toBeLessThan(0.03);
  });

  it('has no sun in the polar night, and sun from the north at midnight in summer', () => {
    const winter = { start: '2026-12-20T00:00:00Z', end: '2026-12-22T00:00:00Z' };
    const summer = { start: '2026-06-20T23:00:00Z', end: '2026-06-21T01:00:00Z' };
    const site = { latitude: 78, longitude: 0, north: 0 };
    expect(ringsOf(houseOf({ site, visit: winter }))).toEqual([]);
    expect(areaOf(houseOf({ site, visit: summer }))).toBeGreaterThan(1e5);
  });

  it('counts down to level where the site says so: at noon refraction alone raises the sun above 0°', () => {
    // At the solstice the sun is 23.44° south of the equator: at noon 90 − 67.1 − 23.44 = −0.54°, raised by about 0.57° (NREL/TP-560-34302).
    const site = { latitude: 67.1, longitude: 0, horizon: 0, north: 180 };
    const visit = { start: '2026-12-21T00:00:00Z', end: '2026-12-22T00:00:00Z' };
    expect(areaOf(houseOf({ site, visit }))).toBeGreaterThan(1e5);
    expect(ringsOf(houseOf({ site: { ...site, latitude: 67.3 }, visit }))).toEqual([]);
  });

  it('is the same on both sides of the date line, and turned round in the southern half', () => {
    const east = houseOf({ site: { latitude: -40, longitude: 180, north: 0 }, visit: days });
    const west = houseOf({ site: { latitude: -40, longitude: -180, north: 0 }, visit: days });
    expect(areaOf(west)).toBeCloseTo(areaOf(east), 3);
    expect(areaOf(east)).toBeGreaterThan(1e6);
    const north = houseOf({ site: { latitude: 40, longitude: 180, north: 0 }, visit: days });
    expect(areaOf(north)).toBeLessThan(areaOf(east) / 10);
  });
});

describe('what cannot be worked out is unknown, never empty', () => {
  it.each([
    ['years without a known accuracy', { start: '1900-01-01T00:00:00Z', end: '1900-01-03T00:00:00Z' }],
    ['more than 13 months', { start: '2026-01-01T00:00:00Z', end: '2027-03-01T00:00:00Z' }],
  ])('%s', (_, visit) => {
    expect(sweptOf(houseOf({ visit })).state).toBe('unknown');
  });
});

describe('openings that are not drawn as they should be', () => {
  it.each<[string, House]>([
    ['at a corner of the house', { window: { offset: 0, width: 1200 } }],
    ['in a wall without thickness', { thickness: 0 }],
    [
      'over another opening',
      {
        more: {
          openings: [{ id: 'two', wall: 'w0', kind: 'window', offset: 2300, width: 1500, bottom: 600, top: 2000 }],
        },
      },
    ],
    [
      'with a wall that ends at its middle',
      { more: { walls: [{ id: 'p', from: [2500, 0], to: [2500, 5000], thickness: 100, side: 'auto' }] } },
    ],
  ])('%s: light comes in', (_, house) => {
    expect(areaOf(houseOf(house))).toBeGreaterThan(3e5);
  });

  it('a window to a cavity lights what is behind an opening of the studs', () => {
    const studs: Wall = { id: 'p', from: [0, 200], to: [6000, 200], thickness: 50, side: 'auto' };
    const hole: Opening = { id: 'd', wall: 'p', kind: 'passage', offset: 2000, width: 1000, bottom: 600, top: 2100 };
    const rooms: Level['rooms'] = [{ id: 'r', name: '', use: 'den', at: [3000, 3000] }];
    expect(isIn(houseOf({ more: { walls: [studs], openings: [hole], rooms } }), [2500, 600])).toBe(true);
  });
});

describe('a thicker wall that runs along a part of the window', () => {
  // The window is at x 2000 to 3000 in a wall of 100 mm, its inner face at y = 0; the thicker wall covers it up to 2500, or from 2500 on.
  const along = (from: Mm, to: Mm): Partial<Level> => ({
    walls: [{ id: 't', from: [from, -50], to: [to, -50], thickness: 500, side: 'auto' }],
  });
  const house = (more: Partial<Level>, turn = 0) =>
    houseOf({ thickness: 100, site: { north: FACING.north + turn }, window: { offset: 2050 }, more });
  const far = (54 * INCH) / tangent(altitude) - 100;

  it.each([
    ['left', along(-50, 2500), 2800, 2200],
    ['right', along(2500, 6050), 2200, 2800],
  ])('on the %s: beside it the head lets light in over the face of the thinner wall', (_, more, x, thick) => {
    expect(isIn(house(more), [thick, far - 200 - 20])).toBe(true);
    expect(isIn(house(more), [thick, far - 200 + 30])).toBe(false);
    expect(isIn(house(more), [x, far - 20])).toBe(true);
    expect(isIn(house(more), [x, 20])).toBe(true);
    expect(isIn(house(more), [x, far + 30])).toBe(false);
  });

  it.each([
    ['left', along(-50, 2500), 45, 3000],
    ['right', along(2500, 6050), -45, 2000],
    ['just the window', along(2000, 3000), 45, 3000],
  ])('%s: at the jamb of the thinner wall light comes in at its angle', (_, more, turn, jamb) => {
    // It passes the outer face, at y = −100, 10 mm from the jamb.
    expect(isIn(house(more, turn), [jamb - Math.sign(turn) * (10 + 100 + 500), 500])).toBe(true);
  });

  it('along all of it and beyond, its own faces count', () => {
    const shift = along(1000, 4000);
    expect(isIn(house(shift), [2500, far - 200 - 20])).toBe(true);
    expect(isIn(house(shift), [2500, far - 200 + 30])).toBe(false);
  });
});

describe('walls outdoors', () => {
  /** A wing on the left of the window, 3 m out into the sun. */
  const wing = (x: number): Level['walls'] => [
    { id: 'a', from: [x, -100], to: [x, -3100], thickness: 200, side: 'auto' },
  ];
  const free = (y: number): Level['walls'] => [
    { id: 'a', from: [1500, y], to: [3500, y], thickness: 200, side: 'auto' },
  ];

  it('stand in the sun over their whole height', () => {
    expect(ringsOf(houseOf({ more: { walls: free(-2000) } }))).toEqual([]);
  });

  it('beside the window they shade nothing of the one instant', () => {
    expect(areaOf(houseOf({ more: { walls: wing(1800) } }))).toBeCloseTo(areaOf(houseOf()), 0);
  });

  it('a wing takes the sun of half a day, and no more', () => {
    const [open, left, right] = [[], wing(1800), wing(3200)].map((walls) =>
      areaOf(houseOf({ visit: days, more: { walls } })),
    ) as [number, number, number];
    for (const shaded of [left, right]) {
      expect(shaded).toBeLessThan(0.9 * open);
      expect(shaded).toBeGreaterThan(0.2 * open);
    }
    expect(left + right).toBeGreaterThan(open);
  });

  it('half of the window is in the shade of half a wall', () => {
    const half = houseOf({ more: { walls: [{ ...(free(-1000)[0] as Wall), from: [2500, -1000] }] } });
    const xs = ringsOf(half).flatMap((ring) => ring.map(([x]) => x));
    expect(Math.max(...xs)).toBeLessThan(2520);
    expect(Math.min(...xs)).toBeGreaterThan(1980);
  });
});
