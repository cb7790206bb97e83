import type { LevelModel, Room } from '../level/types.ts';
import type { Mm, XY } from '../plan/model.ts';
import { distance } from '../plane/point.ts';
import { nearestOnRing } from '../plane/ring.ts';
import type { Line, Ring } from '../plane/types.ts';
import { onFloor, roomOf, TOUCHING } from '../snap/room-faces.ts';

/** The four page directions in which a gap is measured. */
export const SIDES = ['left', 'right', 'up', 'down'] as const;
export type Side = (typeof SIDES)[number];

const STEP: Readonly<Record<Side, XY>> = { left: [-1, 0], right: [1, 0], up: [0, -1], down: [0, 1] };

/**
 * Returns the free length from the edge of an item to the wall face on each side of the page, in mm; null without a
 * wall on that side. Measured along the horizontal and vertical through `middle`, to the faces of the room that
 * contains the item, so that both gaps of an axis and the item add up to the room. Negative if the item reaches into
 * the wall. Openings do not interrupt a wall.
 *
 * @param reach from `middle` to the item's edge on each side, mm
 */
export function wallGaps(
  model: LevelModel,
  middle: XY,
  reach: Readonly<Record<Side, Mm>>,
): Readonly<Record<Side, Mm | null>> {
  const room = roomOf(model, middle);
  const gap = (side: Side): Mm | null => {
    const far = room ? nearFloorEnd(room, middle, STEP[side]) : firstWall(model, middle, STEP[side]);
    if (!Number.isFinite(far)) return null;
    const free = far - reach[side];
    return Math.abs(free) < ROUNDING ? 0 : free;
  };
  return { left: gap('left'), right: gap('right'), up: gap('up'), down: gap('down') };
}

/** Rounding error, mm. */
const ROUNDING: Mm = 1e-6;

/**
 * A point on a wall's face or in the wall is measured from this far in front of it, where the line crosses floor, mm.
 */
const IN_FRONT: Mm = 1e-3;

/** Returns the distance from a middle along a page axis to the end of the floor; negative if it ends behind it. */
function nearFloorEnd(room: Room, middle: XY, step: XY): Mm {
  const [x, y] = onFloor(room, middle);
  const ahead = (x - middle[0]) * step[0] + (y - middle[1]) * step[1];
  const [across, down] = [Math.abs(step[1]) * IN_FRONT, Math.abs(step[0]) * IN_FRONT];
  const beside: readonly XY[] = [
    [x - across, y - down],
    [x + across, y + down],
  ];
  const inFloor = room.floorRings.every((ring) => distance(middle, nearestOnRing(middle, ring)) > IN_FRONT);
  const lines: readonly XY[] = inFloor && x === middle[0] && y === middle[1] ? [[x, y]] : [...beside, [x, y]];
  const ends = lines.map((line) => floorEnd(room, line, step));
  return ahead + (ends.find(Number.isFinite) ?? Number.POSITIVE_INFINITY);
}

/**
 * Returns the distance along a page axis to the end of the stretch of floor that contains the point or is nearest to
 * it; negative if it ends behind it.
 */
function floorEnd({ floorRings }: Room, middle: XY, step: XY): Mm {
  const ways = floorRings.flatMap((ring) => crossings(ring, middle, step)).sort((a, b) => a - b);
  let best = Number.POSITIVE_INFINITY;
  let least = Number.POSITIVE_INFINITY;
  for (let i = 0; i + 1 < ways.length; i += 2) {
    const [from, to] = [ways[i] as Mm, ways[i + 1] as Mm];
    const off = Math.max(0, from, -to);
    if (to - from > ROUNDING && off < least) {
      least = off;
      best = to;
    }
  }
  return best;
}

/** Returns, outdoors, the distance to the first wall; infinite without one. */
function firstWall({ pieces, joints }: LevelModel, middle: XY, step: XY): Mm {
  const ways = [...pieces, ...joints].flatMap(({ body }) => crossings(body, middle, step));
  return ways.reduce((least, way) => (way >= 0 && way < least ? way : least), Number.POSITIVE_INFINITY);
}

/** How far an item is from the nearer wall along one page axis. */
export interface NearGap {
  readonly side: Side;
  /** Negative if it reaches into the wall. */
  readonly gap: Mm;
  /** From the edge of the item to the wall face. */
  readonly line: Line;
}

/** Returns the horizontal, then the vertical gap; none along an axis without a wall on either side. */
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

const NO_REACH = { left: 0, right: 0, up: 0, down: 0 } as const;
/** A wall is looked at this far beside the line of a gap, mm. */
const BESIDE: Mm = 1;
/** A wall that deviates by less than this per mm is square to the page: 1 mm in 5 m of tape. */
const SLANTED = 0.02;

/** Returns whether the wall that ends a gap is slanted: a tape held square to it then reads less than the gap, which runs along the page. */
export function endsAtSlant(model: LevelModel, middle: XY, { side }: Pick<NearGap, 'side'>): boolean {
  const [dx, dy] = STEP[side];
  const reach = wallGaps(model, middle, NO_REACH)[side];
  const [before, after] = [-BESIDE, BESIDE].map(
    (by) => wallGaps(model, [middle[0] + dy * by, middle[1] + dx * by], NO_REACH)[side],
  );
  if (before == null || after == null || reach === null) return false;
  // At a corner or a jog the wall does not go on as it came.
  const goesOn = Math.abs(before - 2 * reach + after) < 1e-3;
  return goesOn && Math.abs(after - before) > 2 * BESIDE * SLANTED;
}

/** Returns the lines to draw for the gaps; none to a wall that the item touches or reaches into. */
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

/** Returns the translation that makes the gap on one side equal `wanted`: dx, dy in mm. */
export function moveToGap(side: Side, gap: Mm, wanted: Mm): XY {
  const [x, y] = STEP[side];
  const by = gap - wanted;
  return [x * by || 0, y * by || 0]; // no −0 in a plan file
}

/**
 * Returns the distances along a page axis at which a line through a point crosses a ring, negative behind it; always
 * an even number. A corner on the line counts for the edge that leaves it downwards or to the right.
 */
function crossings(ring: Ring, from: XY, step: XY): readonly Mm[] {
  const along = step[0] !== 0 ? 0 : 1;
  const across = 1 - along;
  const sign = step[along] as number;
  const found: Mm[] = [];
  ring.forEach((b, index) => {
    const a = ring[(index + ring.length - 1) % ring.length] as XY;
    const [a0, b0, p0] = [a[across] as number, b[across] as number, from[across] as number];
    if (a0 > p0 === b0 > p0) return;
    const share = (p0 - a0) / (b0 - a0);
    const at = (a[along] as number) + ((b[along] as number) - (a[along] as number)) * share;
    found.push((at - (from[along] as number)) * sign);
  });
  return found;
}
