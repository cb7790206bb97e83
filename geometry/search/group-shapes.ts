import type { Mm, Plan, XY } from '../plan/model.ts';
import { assert } from '../plane/assert.ts';
import { HOME_SHORT_TERM } from '../rules/home-short-term.ts';
import { effectiveRules, PROFILES } from '../rules/profiles.ts';
import type { Rule } from '../rules/types.ts';
import type { Spread } from './field/assess.ts';

/** How far the rims of detectors that stand side by side are apart, mm. */
export interface Gap {
  readonly least: Mm;
  readonly most: Mm;
  /** Where in it they are set: as much to spare in the plan's own profile as the gap allows. */
  readonly best: Mm;
}

/** The axes of detectors that stand side by side, about their common middle, before they are turned. */
export interface GroupShape extends Spread {
  readonly offsets: readonly XY[];
  /** Turned by this, radians, the shape comes to lie on itself. */
  readonly period: number;
  /** Whether each keeps the gap to every other; else only to its neighbours in a row. */
  readonly mutual: boolean;
}

/**
 * The gap to be preferred: that of the plan's profile, as far as every other published list that can be met at once allows it;
 * where the profile is silent, that of the others.
 */
export function companionGap(plan: Plan): Gap {
  return companionGaps(plan)[0] as Gap;
}

/** The gap to be preferred, and after it the profile's own where that is wider. */
export function companionGaps({ protocol }: Plan): readonly Gap[] {
  const own = gapOf(effectiveRules(protocol)) ?? gapOf(HOME_SHORT_TERM.rules);
  assert(own !== null, 'the home profile has a gap for a pair');
  const shared = PROFILES.flatMap(({ rules }) => gapOf(rules) ?? []).reduce(narrowed, own);
  if (shared.least === own.least && shared.most === own.most) return [own];
  return [{ ...shared, best: Math.min(shared.most, Math.max(shared.least, own.best)) }, own];
}

function gapOf(rules: readonly Rule[]): Gap | null {
  const rule = rules.find(({ subject }) => subject.of === 'companion');
  if (!rule || rule.least === null) return null;
  const most = rule.most ?? rule.least;
  return { least: rule.least, most, best: (rule.least + most) / 2 };
}

/** What two gaps have in common; the first where they have nothing. */
function narrowed(gap: Gap, other: Gap): Gap {
  const [least, most] = [Math.max(gap.least, other.least), Math.min(gap.most, other.most)];
  return least <= most ? { ...gap, least, most } : gap;
}

/**
 * How `count` detectors, two or more, may stand side by side, what is to be preferred first. Two in a line, three in a triangle:
 * at the best of the gap, else at its least, else at its greatest. Four in a square where the diagonal too keeps to the gap.
 * Three, four and more that do not fit so, in a row; there only neighbours keep the gap, and more than four cannot do better.
 */
function groupShapes(count: number, radius: Mm, { least, most, best }: Gap): GroupShape[] {
  assert(count >= 2, `a group has two detectors or more, got ${count}`);
  const [near, far] = [2 * radius + least, 2 * radius + most];
  const steps = [...new Set([2 * radius + best, near, far])];
  const rows = steps.map((step) => row(count, step));
  if (count === 3) return [...steps.map((step) => polygon(3, step / Math.sqrt(3))), ...rows];
  // As much above the least gap along a side as below the greatest across.
  const side = (near + far) / (1 + Math.SQRT2);
  const fits = count === 4 && side >= near && side * Math.SQRT2 <= far;
  return fits ? [polygon(4, side * Math.SQRT1_2), ...rows] : rows;
}

/**
 * How `count` detectors stand side by side under a plan, what is to be preferred first: each keeping its gap to each, then in the gap
 * of `companionGap`, then in the profile's own.
 */
export function shapesFor(plan: Plan, count: number, radius: Mm): GroupShape[] {
  const shapes = companionGaps(plan).flatMap((gap) => groupShapes(count, radius, gap));
  return [...shapes.filter(({ mutual }) => mutual), ...shapes.filter(({ mutual }) => !mutual)];
}

function polygon(count: 3 | 4, extent: Mm): GroupShape {
  const period = (2 * Math.PI) / count;
  const offsets = Array.from({ length: count }, (_, k): XY => {
    return [extent * Math.cos(k * period), extent * Math.sin(k * period)];
  });
  // The height of the triangle, the side of the square.
  const width = count === 3 ? 1.5 * extent : Math.SQRT2 * extent;
  return { offsets, period, extent, width, mutual: true };
}

function row(count: number, step: Mm): GroupShape {
  const offsets = Array.from({ length: count }, (_, k): XY => [(k - (count - 1) / 2) * step, 0]);
  return { offsets, period: Math.PI, extent: ((count - 1) / 2) * step, width: 0, mutual: count === 2 };
}

/** Offsets about a point, turned by an angle, radians. */
export function placed(offsets: readonly XY[], x: Mm, y: Mm, angle: number): XY[] {
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  return offsets.map(([dx, dy]) => [x + dx * cos - dy * sin, y + dx * sin + dy * cos]);
}

/** How far a point at a distance from the middle of a turn moves when it is turned by an angle, mm. */
export function wayOfTurn(distance: Mm, angle: number): Mm {
  return 2 * distance * Math.sin(Math.min(Math.PI, angle) / 2);
}
