import { roomAt } from '../check/room.ts';
import { standsOn } from '../check/support.ts';
import type { LevelModel } from '../level/types.ts';
import type { Detector, Mm, Plan, XY } from '../plan/model.ts';
import { vectorLength } from '../plane/point.ts';
import { bestFirst, type Chosen } from './best-first.ts';
import { SPOT_TOLERANCE, type Spot, spotOf } from './best-spots.ts';
import { marginField } from './field/margin-field.ts';
import { type Ground, groundOn, marginOfAll, roomGrounds } from './ground.ts';
import { groupOf, type SpotGroup } from './group.ts';
import { companionGaps, type Gap, rotatedOffsets, rotationChord, shapesFor } from './group-shapes.ts';
import { FINEST, searchSpots } from './search-spots.ts';

/**
 * Returns the position with the greatest margin for a second detector of the same size beside a given one: at the
 * same height, in the same room and, if possible, on the same object; rim to rim at the best gap of `companionGap`,
 * else anywhere in that gap, else in the profile's own. The margin is the least of both detectors; the first may be
 * blocked where it is. Null if there is none.
 */
export function companionSpot(plan: Plan, model: LevelModel, detector: Detector): Spot | null {
  for (const ground of groundsOf(plan, model, detector)) {
    for (const gap of companionGaps(plan)) {
      const place = besideIn(ground, detector, gap);
      if (place) return withFirst(spotOf(place), ground, detector.at);
    }
  }
  return null;
}

function besideIn(ground: Ground, detector: Detector, gap: Gap) {
  const [around] = searchRotations(ground, detector.at, [[2 * detector.radius + gap.best, 0]]);
  const at = around?.at[0];
  return around && at ? { ...around, ground, x: at[0], y: at[1] } : besideWithin(ground, detector, gap);
}

/**
 * Same as `companionSpot` for several more detectors: together with the first they are arranged as in `groupShapes`; in a
 * row, the first is at the end. Null if they do not fit.
 */
export function companionSpots(plan: Plan, model: LevelModel, detector: Detector, more: number): SpotGroup | null {
  const shapes = shapesFor(plan, more + 1, detector.radius);
  for (const ground of groundsOf(plan, model, detector)) {
    for (const { offsets, mutual } of shapes) {
      const [[x, y], ...others] = offsets as readonly [XY, ...XY[]];
      const [place] = searchRotations(
        ground,
        detector.at,
        others.map(([ox, oy]): XY => [ox - x, oy - y]),
      );
      if (place) return withFirst(groupOf({ ...place, ground }, mutual), ground, detector.at);
    }
  }
  return null;
}

/**
 * Returns where companions may be: if an object supports the detector, only on it, first off its edge, then anywhere with the
 * whole footprint on it; otherwise in its room. Empty if the room allows no detector at its height.
 */
function groundsOf(plan: Plan, model: LevelModel, detector: Detector): Ground[] {
  const { at, base, radius, tall } = detector;
  const probe = { base, radius, tall };
  const room = roomAt(model, at);
  const around = roomGrounds(plan, model, probe).find((ground) => ground.room === room);
  if (!around) return [];
  const carrier = model.level.objects.find((object) => standsOn(detector, object));
  if (!carrier) return [around];
  const top = { ...around, field: marginField(plan, model, probe, [carrier.id]) };
  return (['off-edge', 'on-it'] as const).flatMap((footing) => groundOn(top, carrier, probe, footing) ?? []);
}

/** Returns the best position anywhere within the gap. */
function besideWithin(ground: Ground, { at: [x, y], radius }: Detector, { least, most }: Gap) {
  const [near, far] = [2 * radius + least, 2 * radius + most];
  // The gap has only one value.
  if (far - near < FINEST) return null;
  const inGap: Ground = {
    ...ground,
    extent: { minX: x - far, minY: y - far, maxX: x + far, maxY: y + far },
    inside: (px, py) => {
      const apart = vectorLength(px - x, py - y);
      return Math.min(ground.inside(px, py), apart - near, far - apart);
    },
  };
  return searchSpots([inGap], { count: 1, apart: 0, tolerance: SPOT_TOLERANCE, taken: [] })[0] ?? null;
}

/** Returns the place with the margin of the first detector included. */
function withFirst<One extends Spot | SpotGroup>(one: One, { field }: Ground, [x, y]: XY): One {
  const first = field.margin(x, y);
  if (first >= one.margin) return { ...one, bound: Math.min(one.bound, first) };
  return { ...one, margin: first, bound: first, limitedBy: field.limitedBy(x, y) };
}

/** An angle, radians, ± a spread. */
interface AngleRange {
  readonly angle: number;
  readonly spread: number;
}
interface RotatedPlace {
  readonly at: readonly XY[];
  readonly margin: Mm;
}

/** The full circle is first divided into this many parts. */
const PARTS = 8;

/** Returns the best rotation of offsets about a point; empty if there is none. */
function searchRotations(ground: Ground, [x, y]: XY, offsets: readonly XY[]): Chosen<RotatedPlace>[] {
  const spread = Math.PI / PARTS;
  const ways = offsets.map((offset) => vectorLength(...offset));
  const farthest = Math.max(...ways);
  return bestFirst<AngleRange, RotatedPlace>(
    {
      starts: Array.from({ length: PARTS }, (_, k) => ({ angle: 2 * k * spread, spread })),
      assess: (turn, enough, found) => {
        const at = rotatedOffsets(offsets, x, y, turn.angle);
        let upper = Number.POSITIVE_INFINITY;
        for (const [k, [px, py]] of at.entries()) {
          const way = rotationChord(ways[k] as Mm, turn.spread);
          if (ground.inside(px, py) + way < 0) return Number.NEGATIVE_INFINITY;
          upper = Math.min(upper, ground.field.around(px, py, way, enough).upper);
        }
        const margin = marginOfAll(ground, at);
        if (margin !== null) found({ at, margin });
        return upper;
      },
      split: ({ angle, spread: whole }) => {
        if (rotationChord(farthest, whole) < FINEST) return [];
        const half = whole / 2;
        return [
          { angle: angle - half, spread: half },
          { angle: angle + half, spread: half },
        ];
      },
      conflicts: () => true,
      excluded: () => false,
    },
    { count: 1, tolerance: SPOT_TOLERANCE },
  );
}
