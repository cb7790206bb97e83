import { describe, expect, it } from 'vitest';
import { checkDetector } from '../../../geometry/check/check-detector.ts';
import { collisionsOf } from '../../../geometry/check/collisions.ts';
import { buildLevel } from '../../../geometry/level/build-level.ts';
import {
  type Detector,
  FIXTURE_KINDS,
  type Fixture,
  type FixtureKind,
  type Shape,
  type XY,
} from '../../../geometry/plan/model.ts';
import { emptyPlan } from '../../../geometry/planfile/empty.ts';
import { PROFILES } from '../../../geometry/rules/profiles.ts';
import { howMany } from '../../helpers/how-many.ts';
import { boxWalls, levelOf } from '../../helpers/level-of.ts';
import { seededRandom } from '../../helpers/seeded-level.ts';

const fixture = (id: string, kind: FixtureKind, shape: Shape, bottom: number, top: number): Fixture => ({
  id,
  kind,
  name: '',
  shape,
  bottom,
  top,
  stream: null,
});
/** 27 by 30 in and 38 in high, about (4000, 3000). */
const WASHER = fixture('f1', 'washer', { box: { center: [4000, 3000], width: 686, depth: 762, turn: 0 } }, 0, 965);
const PIPE = fixture('f2', 'mitigation-pipe', { circle: { center: [6000, 3000], radius: 57 } }, 0, 2400);
/** Its underside is 2 m above the floor. */
const HOOD = fixture('f3', 'exhaust-fan', { circle: { center: [2000, 3000], radius: 300 } }, 2000, 2300);

const level = levelOf({
  walls: boxWalls(0, 0, 8000, 6000),
  rooms: [{ id: 'r1', name: 'Den', use: 'den', at: [1000, 1000] }],
  fixtures: [WASHER, PIPE, HOOD],
});
const detector = (x: number, y: number, base = 762): Detector => ({
  id: 'd1',
  label: 'A1',
  at: [x, y],
  base,
  radius: 50,
  tall: 25,
  pair: null,
});

describe('collisionsOf', () => {
  it.each([
    { name: 'within the washer, lower than its top', at: detector(4000, 3000), found: ['f1'] },
    { name: 'on top of it', at: detector(4000, 3000, 965), found: [] },
    { name: 'its underside a hand below its top', at: detector(4000, 3000, 950), found: ['f1'] },
    { name: 'its rim a millimeter over the edge', at: detector(4000 + 343 + 49, 3000), found: ['f1'] },
    { name: 'its rim at the edge', at: detector(4000 + 343 + 50, 3000), found: [] },
    { name: 'round the pipe, which is thinner than it', at: detector(6040, 3000), found: ['f2'] },
    { name: 'below the hood', at: detector(2000, 3000), found: [] },
  ])('finds $found $name', ({ at, found }) => {
    expect(collisionsOf(level, at).map(({ thing }) => thing.id)).toEqual(found);
  });

  it('is another detector that it overlaps, never itself', () => {
    const beside = { ...detector(1060, 1500), id: 'd2' };
    const pair = { ...level, detectors: [detector(1000, 1500), beside] };
    expect(collisionsOf(pair, detector(1000, 1500)).map(({ thing }) => thing.id)).toEqual(['d2']);
    expect(collisionsOf(pair, beside).map(({ thing }) => thing.id)).toEqual(['d1']);
  });

  it('tells within from over the edge', () => {
    expect(collisionsOf(level, detector(4000, 3000))[0]?.whole).toBe(true);
    expect(collisionsOf(level, detector(4000 + 343 + 30, 3000))[0]?.whole).toBe(false);
  });
});

describe('a thing that a detector stands in', () => {
  it.each(PROFILES.map(({ id }) => id))('is blocked by a check, whatever the profile: %s', (profile) => {
    let collisions = 0;
    for (let seed = 1; seed <= howMany(150, 3000); seed++) {
      const random = seededRandom(seed);
      const { walls, rooms } = level;
      const scattered = Array.from({ length: 30 }, (_, i): Fixture => {
        const kind = FIXTURE_KINDS[Math.floor(random() * FIXTURE_KINDS.length)] as FixtureKind;
        const bottom = random() < 0.7 ? 0 : random() * 1500;
        const center: XY = [500 + random() * 7000, 500 + random() * 5000];
        const shape: Shape =
          random() < 0.5
            ? { circle: { center, radius: 20 + random() * 400 } }
            : { box: { center, width: 20 + random() * 900, depth: 20 + random() * 900, turn: random() * 360 } };
        return fixture(`f${i}`, kind, shape, bottom, bottom + 300 + random() * 1500);
      });
      const objects = scattered.slice(20).map(({ id, shape, bottom, top }) => ({ id, name: '', shape, bottom, top }));
      const other = { ...detector(500 + random() * 7000, 500 + random() * 5000), id: 'd2' };
      const crowded = levelOf({ walls, rooms, fixtures: scattered.slice(0, 20), objects, detectors: [other] });
      const near: XY = [other.at[0] + random() * 90, other.at[1]];
      const at: XY = seed % 4 === 0 ? near : [500 + random() * 7000, 500 + random() * 5000];
      const one = detector(...at, random() * 900);
      const plan = {
        ...emptyPlan(),
        protocol: { profile, overrides: [] },
        levels: [{ ...crowded, detectors: [other, one] }],
      };
      const [drawn] = plan.levels;
      if (!drawn) throw new Error('no level');
      const { checks } = checkDetector(plan, buildLevel(drawn), one);
      const blocked = checks.filter(({ verdict }) => verdict === 'blocked').map(({ subject }) => subject);
      const entered = collisionsOf(drawn, one).map(({ thing }) => thing.id);
      collisions += entered.length;
      expect(blocked, `seed ${seed}`).toEqual(expect.arrayContaining(entered));
    }
    expect(collisions).toBeGreaterThan(20);
  });
});
