import { shapeBody, signedBodyDistance } from '../body.ts';
import { standsOn } from '../carried.ts';
import { roomAt } from '../check/room.ts';
import type { LevelModel } from '../level/types.ts';
import type { Detector, Mm, Plan, XY } from '../plan/model.ts';
import { vectorLength } from '../point.ts';
import { bestFirst, type Chosen } from './best-first.ts';
import { SPOT_TOLERANCE, type Spot, spotOf } from './best-spots.ts';
import { type Ground, marginOfAll, roomGrounds } from './ground.ts';
import { groupOf, type SpotGroup } from './group.ts';
import { companionGap, type Gap, groupShapes, placed, wayOfTurn } from './group-shapes.ts';
import { FINEST, searchSpots } from './search-spots.ts';

/**
 * The place with the most to spare for a second detector of the same size beside one that stands, at the same height and in
 * the same room: rim to rim at the middle of the profile's gap, else wherever the gap allows. Its margin is the least over both
 * detectors; the first may be blocked where it stands. Null where no second one may stand.
 */
export function companionSpot(plan: Plan, model: LevelModel, detector: Detector): Spot | null {
  const ground = groundOf(plan, model, detector);
  if (!ground) return null;
  const gap = companionGap(plan);
  const [around] = searchTurns(ground, detector.at, [[2 * detector.radius + (gap.least + gap.most) / 2, 0]]);
  const at = around?.at[0];
  const place = around && at ? { ...around, ground, x: at[0], y: at[1] } : besideWithin(ground, detector, gap);
  return place && withFirst(spotOf(place), ground, detector.at);
}

/**
 * The same for several more detectors: together with the first they stand as `groupShapes` says, in a row with the first at its
 * end. Null where they do not fit.
 */
export function companionSpots(plan: Plan, model: LevelModel, detector: Detector, more: number): SpotGroup | null {
  const ground = groundOf(plan, model, detector);
  if (!ground) return null;
  for (const { offsets, mutual } of groupShapes(more + 1, detector.radius, companionGap(plan))) {
    const [[x, y], ...others] = offsets as readonly [XY, ...XY[]];
    const [place] = searchTurns(
      ground,
      detector.at,
      others.map(([ox, oy]): XY => [ox - x, oy - y]),
    );
    if (place) return withFirst(groupOf({ ...place, ground }, mutual), ground, detector.at);
  }
  return null;
}

/**
 * The room in which a detector stands, when it may hold one at its height; where a piece of furniture carries it only the top of
 * that, with the whole foot: nothing is set past its edge.
 */
function groundOf(plan: Plan, model: LevelModel, detector: Detector): Ground | null {
  const { at, base, radius, tall } = detector;
  const room = roomAt(model, at);
  const ground = roomGrounds(plan, model, { base, radius, tall }).find((each) => each.room === room) ?? null;
  const carrier = detector.support ? undefined : model.level.objects.find((object) => standsOn(detector, object));
  if (!ground || !carrier) return ground;
  const body = shapeBody(carrier.shape);
  const inside = (x: Mm, y: Mm) => Math.min(ground.inside(x, y), -signedBodyDistance(body, x, y) - radius);
  return { ...ground, on: carrier, extent: body.extent, inside };
}

/** The best place anywhere within the gap. */
function besideWithin(ground: Ground, { at: [x, y], radius }: Detector, { least, most }: Gap) {
  const [near, far] = [2 * radius + least, 2 * radius + most];
  // No room to give way in.
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

/** The margin of the first detector counts as well. */
function withFirst<One extends Spot | SpotGroup>(one: One, { field }: Ground, [x, y]: XY): One {
  const first = field.margin(x, y);
  if (first >= one.margin) return { ...one, bound: Math.min(one.bound, first) };
  return { ...one, margin: first, bound: first, limitedBy: field.limitedBy(x, y) };
}

/** Turned by an angle, radians, give or take a spread. */
interface Turn {
  readonly angle: number;
  readonly spread: number;
}
interface Turned {
  readonly at: readonly XY[];
  readonly margin: Mm;
}

/** A full turn is first looked at in so many parts. */
const PARTS = 8;

/** The best way to turn offsets about a point; none when none will do. */
function searchTurns(ground: Ground, [x, y]: XY, offsets: readonly XY[]): Chosen<Turned>[] {
  const spread = Math.PI / PARTS;
  const ways = offsets.map((offset) => vectorLength(...offset));
  const farthest = Math.max(...ways);
  return bestFirst<Turn, Turned>(
    {
      starts: Array.from({ length: PARTS }, (_, k) => ({ angle: 2 * k * spread, spread })),
      assess: (turn, enough, found) => {
        const at = placed(offsets, x, y, turn.angle);
        let upper = Number.POSITIVE_INFINITY;
        for (const [k, [px, py]] of at.entries()) {
          const way = wayOfTurn(ways[k] as Mm, turn.spread);
          if (ground.inside(px, py) + way < 0) return Number.NEGATIVE_INFINITY;
          upper = Math.min(upper, ground.field.around(px, py, way, enough).upper);
        }
        const margin = marginOfAll(ground, at);
        if (margin !== null) found({ at, margin });
        return upper;
      },
      split: ({ angle, spread: whole }) => {
        if (wayOfTurn(farthest, whole) < FINEST) return [];
        const half = whole / 2;
        return [
          { angle: angle - half, spread: half },
          { angle: angle + half, spread: half },
        ];
      },
      clash: () => true,
      barred: () => false,
    },
    { count: 1, tolerance: SPOT_TOLERANCE },
  );
}
