import { describe, expect, it } from 'vitest';
import { buildLevel } from '../../../geometry/level/build-level.ts';
import type { Fixture, FixtureKind, Level, Plan, PlanObject, Shape, XY } from '../../../geometry/plan/model.ts';
import { levelRegion } from '../../../geometry/region/level-region.ts';
import { drawn, loop, planOf, rectangle } from '../../helpers/drawn.ts';

/**
 * One room of 9.8 × 9.8 m inside the walls, without zones of the walls themselves. The probe has a radius of 0.1, which
 * equals the limit tolerance, so that a zone is exactly as wide as its rule says.
 */
const ROOM = 9800 * 9800;
const PROBE = { base: 762, radius: 0.1, tall: 25.4 };
const AIR = 914.4;
const HEAT = 1219.2;
const OBJECT = 101.6;

const circle = (center: XY, radius: number): Shape => ({ circle: { center, radius } });
const box = (center: XY, width: number, depth: number, turn = 0): Shape => ({ box: { center, width, depth, turn } });

function fixture(kind: FixtureKind, shape: Shape, stream: Fixture['stream'] = null): Fixture {
  const id = `${kind} ${JSON.stringify(shape)}`;
  return { id, kind, name: '', shape, bottom: 0, top: 0, stream };
}
function tall(shape: Shape, bottom = 0): PlanObject {
  return { id: `object ${JSON.stringify(shape)}`, name: '', shape, bottom, top: 2200 };
}

/** Returns the area of floor that these items exclude, mm². */
function taken(rest: Partial<Level>, protocol: Partial<Plan['protocol']> = {}): number {
  const level = drawn(loop('h', rectangle(0, 0, 10_000, 10_000)), {
    rooms: [{ id: 'r1', name: '', use: 'den', at: [5000, 5000] }],
    ceiling: 3000,
    ...rest,
  });
  const overrides = [{ rule: 'outside-wall', distance: 0, note: 'to measure the rest' }, ...(protocol.overrides ?? [])];
  const plan = planOf(level, { protocol: { profile: 'home-short-term', overrides } });
  const [room] = levelRegion(plan, buildLevel(level), PROBE).rooms;
  return ROOM - (room?.area ?? Number.NaN);
}

const disc = (radius: number) => Math.PI * radius ** 2;
/** Returns the intersection area of two discs of one radius, their centers `d` apart. */
const lens = (radius: number, d: number) =>
  2 * radius ** 2 * Math.acos(d / (2 * radius)) - (d / 2) * Math.sqrt(4 * radius ** 2 - d ** 2);
const M: XY = [5000, 5000];
const R = 300 + HEAT;

describe('the floor that is removed', () => {
  it.each<{ name: string; rest: Partial<Level>; area: number; source: string }>([
    { name: 'nothing by an empty room', rest: {}, area: 0, source: 'no rule keeps anything off' },
    { name: 'a disc', rest: { fixtures: [fixture('furnace', circle(M, 300))] }, area: disc(R), source: 'π r²' },
    {
      name: 'half a disc at a wall face',
      rest: { fixtures: [fixture('furnace', circle([5000, 100], 300))] },
      area: disc(R) / 2,
      source: 'the face runs through its middle',
    },
    {
      name: 'a quarter in a corner',
      rest: { fixtures: [fixture('furnace', circle([100, 100], 300))] },
      area: disc(R) / 4,
      source: 'two faces through its middle',
    },
    {
      name: 'two discs that share a lens',
      rest: { fixtures: [fixture('furnace', circle([4000, 5000], 300)), fixture('boiler', circle([5500, 5000], 300))] },
      area: 2 * disc(R) - lens(R, 1500),
      source: 'two discs less what they share once',
    },
    {
      name: 'two discs that touch',
      rest: {
        fixtures: [fixture('furnace', circle([5000 - R, 5000], 300)), fixture('boiler', circle([5000 + R, 5000], 300))],
      },
      area: 2 * disc(R),
      source: 'nothing in common but a point',
    },
    {
      name: 'one disc of two that lie in one another',
      rest: { fixtures: [fixture('furnace', circle(M, 300)), fixture('ceiling-fan', circle([5050, 5000], 200))] },
      area: disc(R),
      source: '50 + 200 + 914.4 is less than 1519.2',
    },
    {
      name: 'one disc of two rules with the same outline',
      rest: { fixtures: [fixture('furnace', circle(M, 300)), fixture('ceiling-fan', circle(M, 300 + HEAT - AIR))] },
      area: disc(R),
      source: 'both reach 1519.2',
    },
    {
      name: 'one disc of twins',
      rest: {
        fixtures: [fixture('furnace', circle(M, 300)), { ...fixture('furnace', circle(M, 300)), id: 'twin' }],
      },
      area: disc(R),
      source: 'the second lies on the first',
    },
    {
      name: 'a stadium around a line',
      rest: { fixtures: [fixture('radiator', box(M, 2000, 0))] },
      area: 2 * HEAT * 2000 + disc(HEAT),
      source: 'two strips and two half discs',
    },
    {
      name: 'a rounded box, turned',
      rest: { fixtures: [fixture('fireplace', box(M, 1500, 600, 25))] },
      area: 1500 * 600 + 2 * (1500 + 600) * HEAT + disc(HEAT),
      source: 'box, four strips, four quarter discs',
    },
    {
      name: 'an L with rounded corners and one sharp inner corner',
      rest: {
        objects: [
          tall({
            polygon: {
              points: [
                [4000, 4000],
                [5000, 4000],
                [5000, 5000],
                [6000, 5000],
                [6000, 6000],
                [4000, 6000],
              ],
            },
          }),
        ],
      },
      area: 3e6 + 8000 * OBJECT + (5 / 4) * disc(OBJECT) - OBJECT ** 2,
      source: 'L, strips along 8000 of edge, five quarter discs; at the inner corner two strips share a square',
    },
    {
      name: 'boxes side by side like one',
      rest: { objects: [0, 1, 2].map((i) => tall(box([4000 + 500 * i, 5000], 500, 400))) },
      area: 1500 * 400 + 2 * (1500 + 400) * OBJECT + disc(OBJECT),
      source: 'three of 500 in a row',
    },
    {
      name: 'what an object takes that hangs 60 above the detector',
      rest: { objects: [tall(circle(M, 200), PROBE.base + PROBE.tall + 60)] },
      // The limit tolerance is 0.1; the radius of the probe compensates it only where it is added in plan.
      area: disc(200 + PROBE.radius + Math.sqrt((OBJECT - 0.1) ** 2 - 60 ** 2)),
      source: 'Pythagoras: √(101.5² − 60²) beside it, from the rim',
    },
    {
      name: 'nothing by an object that hangs 101.5 above the detector',
      rest: { objects: [tall(circle(M, 200), PROBE.base + PROBE.tall + 101.5)] },
      area: 0,
      source: 'the height alone meets 101.6 within 0.1',
    },
    {
      name: 'nothing by a table that carries the detector',
      rest: { objects: [{ ...tall(box(M, 1000, 1000)), top: PROBE.base }] },
      area: 0,
      source: 'it ends where the detector begins',
    },
  ])('$name ($source)', ({ rest, area }) => {
    expect(taken(rest)).toBeCloseTo(area, 3);
  });

  it.each<{ name: string; spread: number; area: number }>([
    { name: 'a quarter', spread: 90, area: disc(2000) / 4 },
    { name: 'a half', spread: 180, area: disc(2000) / 2 },
    { name: 'three quarters', spread: 270, area: (disc(2000) * 3) / 4 },
    { name: 'the whole', spread: 360, area: disc(2000) },
  ])('of a stream all by itself: $name of a disc', ({ spread, area }) => {
    const stream = { direction: 33, spread, reach: 2000 };
    const overrides = [{ rule: 'moving-air', distance: 0, note: 'to measure the stream' }];
    expect(taken({ fixtures: [fixture('supply-register', circle(M, 50), stream)] }, { overrides })).toBeCloseTo(
      area,
      3,
    );
  });

  it('adds up over seven equal discs of which all neighbors touch, with six small gaps between them left free', () => {
    const points = [0, 60, 120, 180, 240, 300].map((degrees): XY => {
      const angle = (degrees * Math.PI) / 180;
      return [5000 + 2 * HEAT * Math.cos(angle), 5000 + 2 * HEAT * Math.sin(angle)];
    });
    const fixtures = [...points, M].map((center) => fixture('radiator', circle(center, 0)));
    expect(taken({ fixtures })).toBeCloseTo(7 * disc(HEAT), 2);
  });
});
