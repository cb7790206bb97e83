import type { Mm, Plan, XY } from '../plan/model.ts';
import { assert } from '../plane/assert.ts';
import { vectorLength } from '../plane/point.ts';
import { HOME_SHORT_TERM } from '../rules/home-short-term.ts';
import { effectiveRules, PROFILES } from '../rules/profiles.ts';
import type { Rule } from '../rules/types.ts';
import type { Spread } from './field/assess.ts';

/** Distance between the rims of detectors side by side, mm. */
export interface Gap {
  readonly least: Mm;
  readonly most: Mm;
  /** The preferred value: the greatest margin in the plan's own profile. */
  readonly best: Mm;
}

/** The axes of detectors side by side, relative to their common middle, unrotated. */
export interface GroupShape extends Spread {
  readonly offsets: readonly XY[];
  /** Rotational symmetry: the shape maps to itself when rotated by this, radians. */
  readonly period: number;
  /** Whether each detector keeps the gap to every other; else only to its neighbors in a row. */
  readonly mutual: boolean;
  /** How far each detector may be moved outward from its offset, mm: 0 for a shape of fixed size. `extent` is that of the widest. */
  readonly slack: Mm;
}

/**
 * Returns the preferred gap: that of the plan's profile, intersected with those of the other published profiles as
 * far as they can be met together; if the profile has none, that of the others.
 */
export function companionGap(plan: Plan): Gap {
  return companionGaps(plan)[0] as Gap;
}

/** Returns the preferred gap, then the profile's own if that is wider. */
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

/** Returns the intersection of two gaps; the first if they are disjoint. */
function narrowed(gap: Gap, other: Gap): Gap {
  const [least, most] = [Math.max(gap.least, other.least), Math.min(gap.most, other.most)];
  return least <= most ? { ...gap, least, most } : gap;
}

/**
 * Returns arrangements of `count` detectors side by side, from 2, in order of preference. Two are in a line, three in a
 * triangle: at the best gap, else the least, else the greatest. Four are in a square if the diagonal is within the gap
 * too. Otherwise they are in a row, where only neighbors keep the gap; more than four have no better arrangement.
 */
function groupShapes(count: number, radius: Mm, { least, most, best }: Gap): GroupShape[] {
  assert(count >= 2, `a group has two detectors or more, got ${count}`);
  const [near, far] = [2 * radius + least, 2 * radius + most];
  const steps = [...new Set([2 * radius + best, near, far])];
  const rows = steps.map((step) => row(count, step));
  if (count === 3) return [...steps.map((step) => polygon(3, step / Math.sqrt(3))), ...rows];
  // The margin along a side (above the least gap) equals that across (below the greatest).
  const side = (near + far) / (1 + Math.SQRT2);
  const fits = count === 4 && side >= near && side * Math.SQRT2 <= far;
  return fits ? [polygon(4, side * Math.SQRT1_2), ...rows] : rows;
}

/**
 * Returns arrangements of `count` detectors for a plan, in order of preference: each keeping its gap to every other, first within
 * the gap of `companionGap`, then within the profile's own.
 */
export function shapesFor(plan: Plan, count: number, radius: Mm): GroupShape[] {
  const shapes = companionGaps(plan).flatMap((gap) => groupShapes(count, radius, gap));
  return [...shapes.filter(({ mutual }) => mutual), ...shapes.filter(({ mutual }) => !mutual)];
}

/** Returns two detectors at any distance that the profile's own gap allows. */
export function pairAtAnyGap(plan: Plan, radius: Mm): GroupShape {
  const { least, most } = companionGaps(plan).at(-1) as Gap;
  const slack = (most - least) / 2;
  const nearest = row(2, 2 * radius + least);
  return { ...nearest, extent: nearest.extent + slack, slack };
}

/** Returns the offsets, each moved outward by a distance, mm. */
export function widened(offsets: readonly XY[], by: Mm): readonly XY[] {
  if (by === 0) return offsets;
  return offsets.map(([x, y]): XY => {
    const share = 1 + by / vectorLength(x, y);
    return [x * share, y * share];
  });
}

function polygon(count: 3 | 4, extent: Mm): GroupShape {
  const period = (2 * Math.PI) / count;
  const offsets = Array.from({ length: count }, (_, k): XY => {
    return [extent * Math.cos(k * period), extent * Math.sin(k * period)];
  });
  // The height of the triangle, the side of the square.
  const width = count === 3 ? 1.5 * extent : Math.SQRT2 * extent;
  return { offsets, period, extent, width, mutual: true, slack: 0 };
}

function row(count: number, step: Mm): GroupShape {
  const offsets = Array.from({ length: count }, (_, k): XY => [(k - (count - 1) / 2) * step, 0]);
  return { offsets, period: Math.PI, extent: ((count - 1) / 2) * step, width: 0, mutual: count === 2, slack: 0 };
}

/** Returns offsets rotated by an angle, radians, about a point. */
export function rotatedOffsets(offsets: readonly XY[], x: Mm, y: Mm, angle: number): XY[] {
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  return offsets.map(([dx, dy]) => [x + dx * cos - dy * sin, y + dx * sin + dy * cos]);
}

/** Returns how far a point at a distance from the center moves when rotated by an angle, mm: the chord. */
export function rotationChord(distance: Mm, angle: number): Mm {
  return 2 * distance * Math.sin(Math.min(Math.PI, angle) / 2);
}
