import fc from 'fast-check';
import { expect } from 'vitest';
import type { Level, Plan, XY } from '../../../../geometry/plan/model.ts';
import { shapeMiddle } from '../../../../geometry/plane/body.ts';
import type { Probe } from '../../../../geometry/region/types.ts';
import { PROFILES } from '../../../../geometry/rules/profiles.ts';
import { Dice } from '../../../helpers/random-level/dice.ts';
import { randomPlan } from '../../../helpers/random-level.ts';

/** A random level under a random profile, a probe, and points on it: anywhere, on corners and edges, in items. */
export const scene = fc.record({ seed: fc.integer({ min: 1, max: 1e6 }), chance: fc.integer({ min: 0, max: 1e6 }) });

interface Scene {
  readonly plan: Plan;
  readonly level: Level;
  readonly probe: Probe;
  readonly points: readonly XY[];
  readonly dice: Dice;
}

export function sceneOf({ seed, chance }: { seed: number; chance: number }): Scene {
  const dice = new Dice(chance);
  const made = randomPlan(seed);
  const profile = dice.chance(0.5) ? null : dice.pick(PROFILES).id;
  const plan = profile === null ? made : { ...made, protocol: { profile, overrides: [] } };
  const level = plan.levels[0] as Level;
  const radius = dice.pick([50.8, 30, 0.05, dice.between(10, 200)]);
  const probe = { base: dice.pick([762, 508, 0, dice.between(0, 2000)]), radius, tall: dice.pick([25.4, 150]) };
  const anchors = [
    ...level.walls.flatMap(({ from, to }) => [from, to]),
    ...level.fixtures.map(({ shape }) => shapeMiddle(shape)),
    ...level.objects.map(({ shape }) => shapeMiddle(shape)),
  ];
  const points = Array.from({ length: 30 }, (): XY => {
    const [a, b] = [dice.pick(anchors), dice.pick(anchors)];
    const t = dice.pick([0, 1, dice.next(), dice.next()]);
    const off = dice.pick([0, 0, dice.between(-200, 200), dice.between(-3000, 3000)]);
    return [a[0] + (b[0] - a[0]) * t + off, a[1] + (b[1] - a[1]) * t + dice.pick([0, off, -off])];
  });
  return { plan, level, probe, points: [...points, ...streamSides(level, dice)], dice };
}

/** Returns points on and beside the edges of every stream. */
function streamSides({ fixtures }: Level, dice: Dice): XY[] {
  return fixtures.flatMap(({ shape, stream }) => {
    if (!stream) return [];
    const [x, y] = shapeMiddle(shape);
    const side = ((stream.direction + dice.pick([-0.5, 0.5]) * stream.spread) * Math.PI) / 180;
    const [out, off] = [dice.between(0, 1.2) * stream.reach, dice.pick([0, 1e-9, -1e-6, 1e-3, -20])];
    return [[x + out * Math.cos(side) - off * Math.sin(side), y + out * Math.sin(side) + off * Math.cos(side)]];
  });
}

/** Expects the same margin, within rounding. */
export function expectSame(a: number, b: number): void {
  if (a !== b) expect(Math.abs(a - b)).toBeLessThan(1e-9);
}
