import { describe, expect, it } from 'vitest';
import { checkDetector } from '../../../geometry/check/check-detector.ts';
import { buildLevel } from '../../../geometry/level/build-level.ts';
import {
  type Detector,
  FIXTURE_KINDS,
  type Level,
  type Override,
  type PlanObject,
  type XY,
} from '../../../geometry/plan/model.ts';
import { levelRegion } from '../../../geometry/region/level-region.ts';
import { arcRingsContain } from '../../../geometry/region/nearest.ts';
import type { Probe } from '../../../geometry/region/types.ts';
import { PROFILES } from '../../../geometry/rules/profiles.ts';
import { fixtureAt, hall, hallDetector, planUnder, RADIUS } from '../../helpers/hall.ts';

/*
 * A detector inside any body at its height is blocked, whatever the rule; an object that supports it does not obstruct it; a pair is in
 * one room and at one height. Our reading: no published text draws a detector inside a washer.
 */
const HOME = 'home-short-term';

function verdictOf(level: Level, change: Partial<Detector>, profile = HOME, overrides: readonly Override[] = []) {
  const plan = planUnder(profile, [level], { protocol: { profile, overrides } });
  return checkDetector(plan, buildLevel(level), hallDetector(change)).verdict;
}

function isFree(level: Level, at: XY, profile: string, overrides: readonly Override[] = []): boolean {
  const plan = planUnder(profile, [level], { protocol: { profile, overrides } });
  const probe: Probe = { base: 900, radius: RADIUS, tall: 25 };
  return levelRegion(plan, buildLevel(level), probe).rooms.some(({ rings }) => arcRingsContain(rings, at));
}

/** Returns every override that loosens a rule of a profile to 0. */
const toNothing = (profile: string): Override[] =>
  (PROFILES.find(({ id }) => id === profile)?.rules ?? []).flatMap(({ id, least, most }) =>
    least !== null && most === null && id !== 'direct-sun'
      ? [{ rule: id, distance: 0, note: 'to see what is left' }]
      : [],
  );

describe('inside a body that reaches its height', () => {
  const cases = PROFILES.flatMap(({ id }) => FIXTURE_KINDS.map((kind) => ({ profile: id, kind })));
  // The body spans x −200 to 0, y 4900 to 5100.
  it.each(cases)(
    '$profile: inside a $kind is blocked and shaded, even with every limit at nothing',
    ({ profile, kind }) => {
      const level = hall({ fixtures: [fixtureAt(kind, { top: 1500 })] });
      for (const overrides of [[], toNothing(profile)]) {
        expect(verdictOf(level, { at: [-100, 5000] }, profile, overrides)).toBe('blocked');
        expect(isFree(level, [-100, 5000], profile, overrides)).toBe(false);
      }
      // With its rim 1 mm inside, and 1 mm clear of it.
      expect(verdictOf(level, { at: [RADIUS - 1, 5000] }, profile, toNothing(profile))).toBe('blocked');
      expect(isFree(level, [RADIUS - 1, 5000], profile, toNothing(profile))).toBe(false);
      expect(verdictOf(level, { at: [RADIUS + 1, 5000] }, profile, toNothing(profile))).not.toBe('blocked');
      expect(isFree(level, [RADIUS + 1, 5000], profile, toNothing(profile))).toBe(true);
    },
  );

  it.each(PROFILES.map(({ id }) => id))('%s: over a body that ends below it nothing stands in it', (profile) => {
    const level = hall({ fixtures: [fixtureAt('mitigation-pipe', { top: 900 })] });
    expect(verdictOf(level, { at: [-100, 5000] }, profile)).not.toBe('blocked');
  });

  it.each(PROFILES.map(({ id }) => id))('%s: two detectors in one another are blocked, paired or single', (profile) => {
    for (const pair of [null, 'A']) {
      const other = hallDetector({ id: 'e', pair, at: [30, 5000] });
      expect(verdictOf(hall({ detectors: [other] }), { pair, at: [0, 5000] }, profile)).toBe('blocked');
    }
  });
});

describe('what carries it is not in its way', () => {
  const desk = (top: number, name = 'Desk'): PlanObject => ({
    id: 't',
    name,
    shape: { box: { center: [0, 5000], width: 600, depth: 400, turn: 0 } },
    bottom: 0,
    top,
  });
  // Underside at 900, radius 50; the desk spans x −300 to 300.
  it.each([
    { name: 'a top 0.2 mm above the underside', top: 900.2, x: 0, blocked: false },
    { name: 'a top 3 mm above it', top: 903, x: 0, blocked: false },
    { name: 'a top 3.1 mm above it', top: 903.1, x: 0, blocked: true },
    { name: 'the foot flush with the edge', top: 900.2, x: 250, blocked: false },
    { name: 'the foot a millimeter over the edge', top: 900.2, x: 251, blocked: true },
    { name: 'beside it, 4 in away', top: 900.2, x: 300 + 101.6 + RADIUS, blocked: false },
    { name: 'beside it, less than 4 in away', top: 900.2, x: 300 + 101 + RADIUS, blocked: true },
  ])('$name: blocked $blocked, and shaded so', ({ top, x, blocked }) => {
    const level = hall({ objects: [desk(top)] });
    expect(verdictOf(level, { at: [x, 5000] }) === 'blocked').toBe(blocked);
    expect(isFree(level, [x + (blocked ? -0.2 : 0) * Math.sign(x - 300 || 1), 5000], HOME)).toBe(!blocked);
  });

  it('leaves as much floor as the foot has on the desk: 500.2 by 300.2 mm', () => {
    const probe: Probe = { base: 900, radius: RADIUS, tall: 25 };
    const areaOf = (objects: readonly PlanObject[]) =>
      levelRegion(planUnder(HOME, [hall({ objects })]), buildLevel(hall({ objects })), probe).rooms[0]?.area ?? 0;
    // 0.1 mm over the edge is tolerated on each side.
    expect(areaOf([desk(900.2)]) - areaOf([desk(1500)])).toBeCloseTo(500.2 * 300.2, 3);
  });
});

describe('a pair', () => {
  const partition = { id: 'inner', from: [0, -10100], to: [0, 10100], thickness: 50, side: 'auto' } as const;
  const rowOf = (other: Partial<Detector>, walls: Level['walls'] = []) => {
    const base = hall();
    const rooms = [...base.rooms, { id: 'r2', name: '', use: 'den' as const, at: [6000, 0] as const }];
    const second = hallDetector({ id: 'e', pair: 'A', ...other });
    const level = { ...base, walls: [...base.walls, ...walls], rooms, detectors: [second] };
    const first = hallDetector({ pair: 'A', at: [-90, 5000] });
    return checkDetector(planUnder(HOME, [level]), buildLevel(level), first).checks.filter(
      ({ rule }) => rule === 'companion',
    );
  };

  it('150 mm from rim to rim is clear in one room, and blocked through a partition', () => {
    const at = [-90 + 2 * RADIUS + 150, 5000] as const;
    expect(rowOf({ at })).toMatchObject([{ subject: 'e', measured: 150, verdict: 'clear' }]);
    expect(rowOf({ at }, [partition])).toMatchObject([
      {
        subject: 'e',
        measured: 150,
        verdict: 'blocked',
        reason: 'The other detector of the pair is not in the same room.',
      },
    ]);
  });

  it.each([
    { base: 900 + 102, verdict: 'clear' },
    { base: 900 - 102, verdict: 'clear' },
    { base: 900 + 102.2, verdict: 'blocked' },
    { base: 900 - 102.2, verdict: 'blocked' },
  ])('the other underside at $base, this one at 900: $verdict (102 mm)', ({ base, verdict }) => {
    expect(rowOf({ at: [-90 + 2 * RADIUS + 150, 5000], base })).toMatchObject([{ verdict }]);
  });
});
