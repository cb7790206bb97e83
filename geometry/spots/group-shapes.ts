import { assert } from '../assert.ts';
import type { Spread } from '../field/assess.ts';
import type { Mm, Plan, XY } from '../plan/model.ts';
import { HOME_SHORT_TERM } from '../rules/home-short-term.ts';
import { effectiveRules } from '../rules/profiles.ts';
import type { Rule } from '../rules/types.ts';

/** How far the rims of detectors that stand side by side are apart, mm. */
export interface Gap {
  readonly least: Mm;
  readonly most: Mm;
}

/** The axes of detectors that stand side by side, about their common middle, before they are turned. */
export interface GroupShape extends Spread {
  readonly offsets: readonly XY[];
  /** Turned by this, radians, the shape comes to lie on itself. */
  readonly period: number;
  /** Whether each keeps the gap to every other; else only to its neighbours in a row. */
  readonly mutual: boolean;
}

/** The gap that the plan's profile asks for; that of the home test where the profile is silent. */
export function companionGap({ protocol }: Plan): Gap {
  const isPair = ({ subject }: Rule) => subject.of === 'companion';
  const rule = effectiveRules(protocol).find(isPair) ?? HOME_SHORT_TERM.rules.find(isPair);
  const least = rule?.least ?? 0;
  return { least, most: rule?.most ?? least };
}

/**
 * How `count` detectors, two or more, may stand side by side, what is to be preferred first. Two in a line, three in a triangle:
 * at the middle of the gap, else at its least, else at its greatest. Four in a square where the diagonal too keeps to the gap.
 * Three, four and more that do not fit so, in a row; there only neighbours keep the gap, and more than four cannot do better.
 */
export function groupShapes(count: number, radius: Mm, { least, most }: Gap): GroupShape[] {
  assert(count >= 2, `a group has two detectors or more, got ${count}`);
  const [near, far] = [2 * radius + least, 2 * radius + most];
  const steps = near < far ? [(near + far) / 2, near, far] : [near];
  const rows = steps.map((step) => row(count, step));
  if (count === 3) return [...steps.map((step) => polygon(3, step / Math.sqrt(3))), ...rows];
  // As much above the least gap along a side as below the greatest across.
  const side = (near + far) / (1 + Math.SQRT2);
  const fits = count === 4 && side >= near && side * Math.SQRT2 <= far;
  return fits ? [polygon(4, side * Math.SQRT1_2), ...rows] : rows;
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
