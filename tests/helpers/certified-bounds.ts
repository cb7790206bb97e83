import { measureSubject } from '../../geometry/check/measure.ts';
import { roomBar } from '../../geometry/check/room.ts';
import { everyWall, heightBetween, sharesHeight, subjectsOf, supportedDepth } from '../../geometry/check/subjects.ts';
import type { LevelModel, Room } from '../../geometry/level/types.ts';
import type { Plan } from '../../geometry/plan/model.ts';
import { bodyDistance, signedBodyDistance } from '../../geometry/plane/body.ts';
import { type Extent, ringExtent } from '../../geometry/plane/extent.ts';
import { ringsContain } from '../../geometry/plane/ring.ts';
import { LIMIT_TOLERANCE } from '../../geometry/plane/tolerances.ts';
import type { Probe } from '../../geometry/region/types.ts';
import { effectiveRules } from '../../geometry/rules/profiles.ts';

/*
 * Lower and upper bounds by subdivision of squares, from the distances of the checker only, without region, margin field or search. Every
 * function below is 1-Lipschitz: its value at the center of a square, plus or minus half the diagonal, bounds it on the whole square.
 */

export interface Bounds {
  readonly least: number;
  readonly most: number;
}

type Measure = (x: number, y: number) => number;

interface Scene {
  /** Margin of each rule at each subject, mm. */
  readonly margins: readonly Measure[];
  /** For furniture that may carry the probe: the margin beside it, and the distance of the base inside the edge of its top. */
  readonly tops: readonly { readonly outer: Measure; readonly depth: Measure }[];
  /** From each wall to the rim, mm: negative inside the wall. */
  readonly walls: readonly Measure[];
}

function sceneOf(plan: Plan, model: LevelModel, probe: Probe): Scene {
  const tops: { outer: Measure; depth: Measure }[] = [];
  const margins = effectiveRules(plan.protocol).flatMap((rule) =>
    subjectsOf(rule, model).flatMap((subject): Measure[] => {
      if (!subject.keepOut && (rule.least ?? 0) <= LIMIT_TOLERANCE && sharesHeight(subject, probe)) {
        return [(x, y) => bodyDistance(subject.body, x, y) - probe.radius];
      }
      if (!subject.keepOut && rule.least === null) return [];
      const required = subject.keepOut ? 0 : (rule.least ?? 0);
      if (rule.measured === 'space' && heightBetween(subject, probe) === null) return [];
      const outer: Measure = (x, y) => {
        const inPlan = Math.max(0, bodyDistance(subject.body, x, y) - probe.radius);
        return Math.hypot(inPlan, rule.measured === 'space' ? (heightBetween(subject, probe) ?? 0) : 0) - required;
      };
      const top = subject.keepOut ? null : supportedDepth(rule, subject, probe);
      if (top !== null) {
        tops.push({ outer, depth: (x, y) => -signedBodyDistance(subject.body, x, y) - top });
        return [];
      }
      return [subject.keepOut ? (x, y) => measureSubject(rule, subject, probe, x, y) as number : outer];
    }),
  );
  const rim = probe.radius - LIMIT_TOLERANCE;
  return {
    margins,
    tops,
    walls: everyWall(model).map(
      ({ body }) =>
        (x: number, y: number) =>
          bodyDistance(body, x, y) - rim,
    ),
  };
}

/**
 * Returns bounds of the area of a room in which the axis may be placed, mm²: the squares that are wholly allowed, and those that are not
 * wholly excluded. Squares are subdivided down to half a side of `finest` mm.
 */
export function areaBounds(plan: Plan, model: LevelModel, probe: Probe, room: Room, finest: number): Bounds {
  const { margins, tops, walls } = sceneOf(plan, model, probe);
  const measures = [
    // Allowed beside the furniture or on it: the maximum of two 1-Lipschitz functions is 1-Lipschitz.
    ...tops.map(
      ({ outer, depth }): Measure =>
        (x, y) =>
          Math.max(outer(x, y) + LIMIT_TOLERANCE, depth(x, y)),
    ),
    ...margins.map(
      (one): Measure =>
        (x, y) =>
          one(x, y) + LIMIT_TOLERANCE,
    ),
    ...walls,
  ];
  const sum = { least: 0, most: 0 };
  const visit = (x: number, y: number, half: number, near: readonly Measure[]) => {
    const reach = half * Math.SQRT2;
    const open: Measure[] = [];
    for (const measure of near) {
      const here = measure(x, y);
      if (here < -reach) return;
      if (here <= reach) open.push(measure);
    }
    const area = 4 * half * half;
    // No wall reaches into the square, so that it is in one room.
    const whole = open.length === 0;
    if (whole || half <= finest) {
      if (whole && !ringsContain(room.centerRings, [x, y])) return;
      if (whole) sum.least += area;
      sum.most += area;
      return;
    }
    const h = half / 2;
    for (const [sx, sy] of QUARTERS) visit(x + sx * h, y + sy * h, h, open);
  };
  const { minX, minY, maxX, maxY } = ringExtent(room.centerRings[0] ?? []);
  if (minX > maxX) return sum;
  visit((minX + maxX) / 2, (minY + maxY) / 2, Math.max(maxX - minX, maxY - minY) / 2, measures);
  return sum;
}

const QUARTERS = [
  [-1, -1],
  [1, -1],
  [-1, 1],
  [1, 1],
] as const;

/**
 * Returns bounds of the best margin of the level, mm; `least` is negative infinity while no allowed place is found. Squares are dropped when
 * they can improve the best by `tolerance` at most, so that the final best plus the tolerance is an upper bound.
 */
export function bestBounds(plan: Plan, model: LevelModel, probe: Probe, tolerance: number, finest: number): Bounds {
  const { margins, tops, walls } = sceneOf(plan, model, probe);
  // On furniture that carries the probe the margin jumps: it is not 1-Lipschitz there.
  const round = (x: number, y: number, reach: number) =>
    tops.reduce(
      (most, { outer, depth }) => (depth(x, y) + reach >= 0 ? most : Math.min(most, outer(x, y) + reach)),
      Infinity,
    );
  const rooms = model.rooms.filter((room) => !roomBar(room, plan.protocol).reason);
  let best = Number.NEGATIVE_INFINITY;
  let left = Number.NEGATIVE_INFINITY;
  const visit = (x: number, y: number, half: number, near: readonly Measure[], nearWalls: readonly Measure[]) => {
    const reach = half * Math.SQRT2;
    const clear = least(nearWalls, x, y);
    if (clear < -reach) return;
    const inside = rooms.some(({ centerRings }) => ringsContain(centerRings, [x, y]));
    if (!inside && clear + probe.radius > reach) return;
    const bare = least(near, x, y);
    const margin = Math.min(bare, round(x, y, 0));
    const upper = Math.min(bare + reach, round(x, y, reach));
    if (upper < -LIMIT_TOLERANCE || upper <= best + tolerance) return;
    if (inside && clear >= 0 && margin >= -LIMIT_TOLERANCE) best = Math.max(best, margin);
    if (upper <= best + tolerance) return;
    if (half <= finest) {
      left = Math.max(left, upper);
      return;
    }
    const open = near.filter((one) => one(x, y) <= bare + 2 * reach);
    const openWalls = nearWalls.filter((one) => one(x, y) <= clear + 2 * reach);
    const h = half / 2;
    const parts = QUARTERS.map(([sx, sy]) => ({ px: x + sx * h, py: y + sy * h }));
    const ranked = parts.map((part) => ({ ...part, rank: least(open, part.px, part.py) }));
    for (const { px, py } of ranked.sort((a, b) => b.rank - a.rank)) visit(px, py, h, open, openWalls);
  };
  for (const { centerRings } of rooms) {
    const { minX, minY, maxX, maxY }: Extent = ringExtent(centerRings[0] ?? []);
    if (minX > maxX) continue;
    visit((minX + maxX) / 2, (minY + maxY) / 2, Math.max(maxX - minX, maxY - minY) / 2, margins, walls);
  }
  return { least: best, most: Math.max(left, best + tolerance) };
}

function least(measures: readonly Measure[], x: number, y: number): number {
  let value = Number.POSITIVE_INFINITY;
  for (const measure of measures) value = Math.min(value, measure(x, y));
  return value;
}
