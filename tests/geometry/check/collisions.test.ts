import { describe, expect, it } from 'vitest';
import { checkDetector } from '../../../geometry/check/check-detector.ts';
import { collisionsOf } from '../../../geometry/check/collisions.ts';
import { buildLevel } from '../../../geometry/level/build-level.ts';
import { describeCollision } from '../../../geometry/messages/index.ts';
import type { Detector, Fixture, FixtureKind, Shape } from '../../../geometry/plan/model.ts';
import { emptyPlan } from '../../../geometry/planfile/empty.ts';
import { boxWalls, levelOf } from '../../helpers/level-of.ts';

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
/** Hangs 2 m above the floor. */
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
const plan = { ...emptyPlan(), levels: [level] };
const told = (each: Detector) => describeCollision(level, each, checkDetector(plan, buildLevel(level), each));

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

describe('describeCollision', () => {
  it('has nothing to add: a check blocks every thing that the detector stands in', () => {
    const inside = detector(6000, 3000);
    const report = checkDetector(plan, buildLevel(level), inside);
    expect(report.checks).toContainEqual(
      expect.objectContaining({ rule: 'object', subject: 'f2', measured: 0, verdict: 'blocked' }),
    );
    expect(told(inside)).toBe('');
    expect(describeCollision(level, inside, { ...report, checks: [] })).toBe(
      'It stands inside the mitigation pipe. Move it clear of it.',
    );
  });

  it('is silent on open floor, and where a check blocks the spot for the same thing', () => {
    expect(told(detector(1000, 1500))).toBe('');
    const furnace = { ...WASHER, kind: 'furnace' as const };
    const heated = { ...level, fixtures: [furnace] };
    const report = checkDetector({ ...plan, levels: [heated] }, buildLevel(heated), detector(4000, 3000));
    expect(report.checks.some(({ subject, verdict }) => subject === 'f1' && verdict === 'blocked')).toBe(true);
    expect(describeCollision(heated, detector(4000, 3000), report)).toBe('');
  });
});
