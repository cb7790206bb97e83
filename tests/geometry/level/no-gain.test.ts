import { describe, expect, it } from 'vitest';
import { buildLevel } from '../../../geometry/level/build-level.ts';
import type { LevelModel } from '../../../geometry/level/types.ts';
import type { Level, Plan, XY } from '../../../geometry/plan/model.ts';
import { bodyDistance, ringBody } from '../../../geometry/plane/body.ts';
import { nearestOnRing, ringsContain } from '../../../geometry/plane/ring.ts';
import { levelRegion } from '../../../geometry/region/level-region.ts';
import { arcRingsContain, nearestOnEdge } from '../../../geometry/region/nearest.ts';
import type { LevelRegion } from '../../../geometry/region/types.ts';
import { howMany } from '../../helpers/how-many.ts';
import { Dice } from '../../helpers/random-level/dice.ts';
import { withInsideWall } from '../../helpers/random-level/inside-walls.ts';
import { randomPlan } from '../../helpers/random-level.ts';

/*
 * Adding an inside wall never enlarges a floor, a region or a distance, for any wall at any position: random houses
 * with partitions at every node and angle, walls drawn twice, nearly coinciding, split and short, and ends that miss
 * each other. The environment can select more or other houses: STILLSPOT_HOUSES=20000, STILLSPOT_FIRST=1.
 */
const HOUSES = Number(process.env.STILLSPOT_HOUSES ?? howMany(40, 200));
const FIRST = Number(process.env.STILLSPOT_FIRST ?? 1);
const BATCH = 100;
/** Walls added to each house, one after the other; each house is compared with the one before. */
const ADDED = 3;
const PLACES = 60;
const PROBE = { base: 762, radius: 50.8, tall: 25.4 };
/**
 * Points within the node tolerance (0.01 mm) are merged: a distance may change by that, and by slightly more at a sharp
 * corner. Mm.
 */
const TOUCHED = 0.05;

const seen = { houses: 0, walls: 0, passedOver: 0, places: 0, onFloor: 0, allowed: 0 };

interface Stage {
  readonly level: Level;
  readonly model: LevelModel;
  readonly region: LevelRegion;
}

function stageOf(plan: Plan, level: Level): Stage {
  const model = buildLevel(level);
  // The published rule: if less is required of outside walls than of inside ones, a wall that becomes outside frees
  // floor.
  const published = { ...plan, levels: [level], protocol: { ...plan.protocol, overrides: [] } };
  return { level, model, region: levelRegion(published, model, PROBE) };
}

function faults(seed: number): string[] {
  const dice = new Dice(seed);
  const plan = randomPlan(seed);
  let level = plan.levels[0] as Level;
  for (let i = dice.int(0, 3); i > 0; i--) level = withInsideWall(dice, level, `rough${i}`);
  let before = stageOf(plan, level);
  const wrong: string[] = [];
  seen.houses++;
  for (let i = 0; i < ADDED; i++) {
    const after = stageOf(plan, withInsideWall(dice, before.level, `added${i}`));
    if (isInside(before, after)) {
      seen.walls++;
      wrong.push(...gains(before, after, dice).map((text) => `seed ${seed}, wall ${i}: ${text}`));
    } else seen.passedOver++;
    before = after;
  }
  return wrong;
}

/** Returns whether the added wall is an inside wall: not if it turns outdoor ground into a room, or separates two labels so that both count. */
function isInside(before: Stage, after: Stage): boolean {
  const shared = before.model.notices.some(({ kind }) => kind === 'labels-share-room');
  return (
    !shared &&
    after.model.rooms.every(({ labelPoint }) =>
      before.model.rooms.some(({ centerRings }) => ringsContain(centerRings, labelPoint)),
    )
  );
}

function gains(before: Stage, after: Stage, dice: Dice): string[] {
  return placesIn(after, dice).flatMap((at) => {
    seen.places++;
    const found: string[] = [];
    const say = (text: string) => found.push(`(${at}): ${text}`);
    if (isOnFloor(after, at)) {
      seen.onFloor++;
      if (!isOnFloor(before, at) && !isByFloorEdge(before, at)) say('floor that was none');
    }
    if (isAllowed(after, at)) {
      seen.allowed++;
      if (!isAllowed(before, at) && !isByRegionEdge(before, at)) say('allowed where it was not');
    }
    const [old, now] = [distances(before.model, at), distances(after.model, at)];
    for (const kind of ['outside', 'wall', 'opening'] as const) {
      if (now[kind] > old[kind] + TOUCHED) say(`${kind} at ${now[kind]}, was ${old[kind]}`);
    }
    return found;
  });
}

/** Returns places anywhere on the drawing, and around the ends of the last wall and some others. */
function placesIn({ level: { walls } }: Stage, dice: Dice): XY[] {
  const ends = walls.flatMap(({ from, to }) => [from, to]);
  const [left, right] = [Math.min(...ends.map(([x]) => x)), Math.max(...ends.map(([x]) => x))];
  const [top, bottom] = [Math.min(...ends.map(([, y]) => y)), Math.max(...ends.map(([, y]) => y))];
  const added = walls[walls.length - 1];
  return Array.from({ length: PLACES }, (_, i): XY => {
    if (i % 3 === 0) return [dice.between(left, right), dice.between(top, bottom)];
    const share = dice.pick([0, 1, dice.next()]);
    const [x, y] = !added || i % 3 === 1 ? dice.pick(ends) : alongOf(added.from, added.to, share);
    const reach = dice.pick([60, 400, 1200]);
    return [x + dice.between(-reach, reach), y + dice.between(-reach, reach)];
  });
}

function alongOf(a: XY, b: XY, share: number): XY {
  return [a[0] + (b[0] - a[0]) * share, a[1] + (b[1] - a[1]) * share];
}

const isOnFloor = ({ model }: Stage, at: XY) => model.rooms.some(({ floorRings }) => ringsContain(floorRings, at));
const isAllowed = ({ region }: Stage, at: XY) => region.rooms.some(({ rings }) => arcRingsContain(rings, at));

function isByFloorEdge({ model }: Stage, at: XY): boolean {
  return model.rooms.some(({ floorRings }) => floorRings.some((ring) => near(nearestOnRing(at, ring), at)));
}

function isByRegionEdge({ region }: Stage, at: XY): boolean {
  return region.rooms.some(({ rings }) => rings.some((ring) => ring.some((edge) => near(nearestOnEdge(edge, at), at))));
}

function near([x, y]: XY, [px, py]: XY): boolean {
  return Math.hypot(x - px, y - py) <= TOUCHED;
}

function distances(
  { pieces, joints, openings }: LevelModel,
  [x, y]: XY,
): Record<'outside' | 'wall' | 'opening', number> {
  const least = (bodies: readonly { readonly body: readonly XY[] }[]) =>
    Math.min(...bodies.map(({ body }) => bodyDistance(ringBody(body), x, y)));
  const walls = [...pieces, ...joints];
  return {
    outside: least(walls.filter(({ outside }) => outside)),
    wall: least(walls),
    opening: least(openings.filter(({ outside }) => outside)),
  };
}

describe(`adding an interior wall, in houses from seed ${FIRST}`, () => {
  const batches = Array.from({ length: Math.ceil(HOUSES / BATCH) }, (_, i) => FIRST + i * BATCH);
  it.each(batches)('enlarges no floor, no region and no distance: seeds from %d', { timeout: 600_000 }, (first) => {
    const wrong: string[] = [];
    for (let seed = first; seed < Math.min(first + BATCH, FIRST + HOUSES); seed++) wrong.push(...faults(seed));
    expect(wrong).toEqual([]); // the list is the message
  });

  // Walls that diverge by 0.001 and 0.002 rad, with a wall that crosses where they are barely the node tolerance apart:
  // the distance to outside walls grew by 0.4 mm. And a wall marked inside that starts 0.007 mm beside an outside one: its
  // joint counted as outside until a third wall was added, 64 mm.
  it.each([1016910, 2001820, 2013172])('not in the house of seed %d either', (seed) => {
    const { ...before } = seen;
    expect(faults(seed)).toEqual([]);
    Object.assign(seen, before);
  });

  it('has shown something', () => {
    if (process.env.STILLSPOT_TALLY) console.info(seen);
    expect(seen.houses).toBe(HOUSES);
    expect(seen.walls).toBeGreaterThan(HOUSES);
    expect(seen.onFloor).toBeGreaterThan(5 * HOUSES);
    expect(seen.allowed).toBeGreaterThan(HOUSES);
  });
});
