import type { LevelModel, Ring } from './level/types.ts';
import type { Mm, XY } from './plan/model.ts';
import type { Line } from './snap.ts';

/** The four ways that a tape is held on the page. */
export const SIDES = ['left', 'right', 'up', 'down'] as const;
export type Side = (typeof SIDES)[number];

/** A gap below this, mm, is none: no tape reads it. */
export const TOUCHING: Mm = 1;

const STEP: Readonly<Record<Side, XY>> = { left: [-1, 0], right: [1, 0], up: [0, -1], down: [0, 1] };

/**
 * Free length from the edge of a thing to the first wall face on each side of the page, in mm; null where no wall
 * stands on that side. Measured along the level line through `middle`, as a tape is held. Negative where the thing
 * reaches into the wall. Openings do not interrupt a wall.
 * @param reach from `middle` to the thing's edge on each side, mm
 */
export function wallGaps(
  model: LevelModel,
  middle: XY,
  reach: Readonly<Record<Side, Mm>>,
): Readonly<Record<Side, Mm | null>> {
  const gap = (side: Side): Mm | null => {
    const far = Math.min(...model.pieces.map(({ body }) => firstFace(body, middle, STEP[side])));
    return Number.isFinite(far) ? far - reach[side] : null;
  };
  return { left: gap('left'), right: gap('right'), up: gap('up'), down: gap('down') };
}

/** How far a thing stands from the nearer wall along one axis of the page, as one tapes it. */
export interface NearGap {
  readonly side: Side;
  /** Below zero where it reaches into the wall. */
  readonly gap: Mm;
  /** From the edge of the thing to the wall face. */
  readonly line: Line;
}

/** Across the page, then down it; none along an axis without a wall on either side. */
export function nearGaps(model: LevelModel, middle: XY, reach: Readonly<Record<Side, Mm>>): readonly NearGap[] {
  const gaps = wallGaps(model, middle, reach);
  return (
    [
      ['left', 'right'],
      ['up', 'down'],
    ] as const
  ).flatMap((sides) => {
    const [nearer] = sides
      .flatMap((side) => (gaps[side] === null ? [] : [{ side, gap: gaps[side] }]))
      .sort((a, b) => a.gap - b.gap);
    return nearer ? [{ ...nearer, line: lineAlong(middle, nearer.side, reach[nearer.side], nearer.gap) }] : [];
  });
}

/** The lines to be drawn for them: none to a wall that the thing touches or reaches into. */
export function gapLines(model: LevelModel, middle: XY, reach: Readonly<Record<Side, Mm>>): readonly Line[] {
  return nearGaps(model, middle, reach).flatMap(({ gap, line }) => (gap > TOUCHING ? [line] : []));
}

function lineAlong([x, y]: XY, side: Side, from: Mm, length: Mm): Line {
  const [dx, dy] = STEP[side];
  return [
    [x + dx * from, y + dy * from],
    [x + dx * (from + length), y + dy * (from + length)],
  ];
}

/** How to move a thing so that its gap on one side becomes `wanted`: dx, dy in mm. */
export function moveToGap(side: Side, gap: Mm, wanted: Mm): XY {
  const [x, y] = STEP[side];
  const by = gap - wanted;
  return [x * by || 0, y * by || 0]; // no −0 in a plan file
}

/** Distance along a page axis to where the ray first enters the ring; infinite when it misses. */
function firstFace(ring: Ring, from: XY, step: XY): Mm {
  const along = step[0] !== 0 ? 0 : 1;
  const across = 1 - along;
  const sign = step[along] as number;
  let least = Number.POSITIVE_INFINITY;
  ring.forEach((b, index) => {
    const a = ring[(index + ring.length - 1) % ring.length] as XY;
    const [a0, b0, p0] = [a[across] as number, b[across] as number, from[across] as number];
    if (Math.min(a0, b0) > p0 || Math.max(a0, b0) < p0) return;
    // A face along the ray is hit at its nearer end.
    const shares = a0 === b0 ? [0, 1] : [(p0 - a0) / (b0 - a0)];
    for (const share of shares) {
      const at = (a[along] as number) + ((b[along] as number) - (a[along] as number)) * share;
      const far = (at - (from[along] as number)) * sign;
      if (far >= 0 && far < least) least = far;
    }
  });
  return least;
}
