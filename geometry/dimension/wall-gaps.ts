import type { LevelModel, Room } from '../level/types.ts';
import type { Mm, XY } from '../plan/model.ts';
import { distance } from '../plane/point.ts';
import { nearestOnRing } from '../plane/ring.ts';
import type { Line, Ring } from '../plane/types.ts';
import { onFloor, roomOf, TOUCHING } from '../snap/room-faces.ts';

/** The four ways that a tape is held on the page. */
export const SIDES = ['left', 'right', 'up', 'down'] as const;
export type Side = (typeof SIDES)[number];

const STEP: Readonly<Record<Side, XY>> = { left: [-1, 0], right: [1, 0], up: [0, -1], down: [0, 1] };

/**
 * Free length from the edge of a thing to the wall face on each side of the page, in mm; null where no wall stands on that
 * side. Measured along the level line through `middle`, as a tape is held, to the faces of the room that the thing is in: both
 * gaps of an axis and the thing between them add up to the room. Negative where the thing reaches into the wall. Openings do not
 * interrupt a wall.
 * @param reach from `middle` to the thing's edge on each side, mm
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
    return Math.abs(free) < DUST ? 0 : free;
  };
  return { left: gap('left'), right: gap('right'), up: gap('up'), down: gap('down') };
}

/** A gap smaller than this is the dust of arithmetic, mm. */
const DUST: Mm = 1e-6;

/** What lies on a wall's face, or in the wall, is measured a hair in front of it, where the line runs over floor, mm. */
const HAIR: Mm = 1e-3;

/** From a middle along a page axis to the end of the floor; negative where it ends behind it. */
function nearFloorEnd(room: Room, middle: XY, step: XY): Mm {
  const [x, y] = onFloor(room, middle);
  const ahead = (x - middle[0]) * step[0] + (y - middle[1]) * step[1];
  const [across, down] = [Math.abs(step[1]) * HAIR, Math.abs(step[0]) * HAIR];
  const beside: readonly XY[] = [
    [x - across, y - down],
    [x + across, y + down],
  ];
  const inFloor = room.floorRings.every((ring) => distance(middle, nearestOnRing(middle, ring)) > HAIR);
  const lines: readonly XY[] = inFloor && x === middle[0] && y === middle[1] ? [[x, y]] : [...beside, [x, y]];
  const ends = lines.map((line) => floorEnd(room, line, step));
  return ahead + (ends.find(Number.isFinite) ?? Number.POSITIVE_INFINITY);
}

/** Along a page axis to where the stretch of floor ends that the point is on, or nearest to; negative where it ends behind it. */
function floorEnd({ floorRings }: Room, middle: XY, step: XY): Mm {
  const ways = floorRings.flatMap((ring) => crossings(ring, middle, step)).sort((a, b) => a - b);
  let best = Number.POSITIVE_INFINITY;
  let least = Number.POSITIVE_INFINITY;
  for (let i = 0; i + 1 < ways.length; i += 2) {
    const [from, to] = [ways[i] as Mm, ways[i + 1] as Mm];
    const off = Math.max(0, from, -to);
    if (to - from > DUST && off < least) {
      least = off;
      best = to;
    }
  }
  return best;
}

/** Outdoors: to the first wall that stands there; infinite where none does. */
function firstWall({ pieces, joints }: LevelModel, middle: XY, step: XY): Mm {
  const ways = [...pieces, ...joints].flatMap(({ body }) => crossings(body, middle, step));
  return ways.reduce((least, way) => (way >= 0 && way < least ? way : least), Number.POSITIVE_INFINITY);
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

/**
 * Distances along a page axis to where the level line through a point crosses a ring, negative behind it; an even number. A corner
 * on the line counts for the edge that leaves it down the page or to the right.
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
