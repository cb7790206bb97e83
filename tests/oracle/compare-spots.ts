import { blockingChecks } from '../../geometry/check/blocking-checks.ts';
import type { LevelModel } from '../../geometry/level/types.ts';
import type { XY } from '../../geometry/plan/model.ts';
import { levelRegion } from '../../geometry/region/level-region.ts';
import { arcRingsContain, nearestSpot } from '../../geometry/region/nearest.ts';
import type { LevelRegion, Probe } from '../../geometry/region/types.ts';
import type { Dice } from '../helpers/random-level/dice.ts';
import { CLOSE } from './compare-checks.ts';
import { depthInFloor, type OracleLevel, roomAt, verdictOfUse } from './geos-oracle.ts';
import { atLeastOutside, type Blocker, blockersOf, heightAllows, outsideOf } from './region.ts';
import { oracleRows, SHORTFALL } from './rules.ts';
import type { Tally } from './tally.ts';

/** Within this distance of a limit, mm, either answer for a spot is right. */
const BAND = 0.01;
/** Number of samples anywhere in the house, and number of samples close to the boundaries of excluded areas. */
const EACH_WAY = 50;

/** Returns the least margin over all rules at a spot, mm; negative where a check blocks. */
export function spareAt(oracle: OracleLevel, probe: Probe, blockers: readonly Blocker[], x: number, y: number): number {
  const room = roomAt(oracle, x, y);
  const depth = depthInFloor(oracle, room, x, y);
  if (!room || verdictOfUse(oracle, room) !== 'clear' || !heightAllows(oracle, probe)) return -depth - 1;
  let least = depth - Math.max(0, probe.radius - SHORTFALL);
  for (const blocker of blockers)
    if (atLeastOutside(blocker, x, y) < least) least = Math.min(least, outsideOf(blocker, x, y));
  return least;
}

/** Compares region, checks and oracle at sampled spots, and checks that the nearest valid spot is valid and is the nearest. */
export function compareSpots(oracle: OracleLevel, model: LevelModel, probe: Probe, dice: Dice, tally: Tally): string[] {
  const region = levelRegion(oracle.plan, model, probe);
  const blockers = blockersOf(oracle, probe);
  const rings = region.rooms.map((room) => room.rings);
  const wrong: string[] = [];
  const inside: XY[] = [];
  const spots = [...thrownAnywhere(model, dice), ...thrownAtEdges(region, blockers, dice)];
  for (const at of spots) {
    const [x, y] = at;
    tally.samples++;
    const spare = spareAt(oracle, probe, blockers, x, y);
    const isIn = rings.some((one) => arcRingsContain(one, at));
    if (isIn) inside.push(at);
    if (Math.abs(spare) < BAND || nearFloorEdge(oracle, x, y)) {
      tally.samplesOnTheEdge++;
      continue;
    }
    if (isIn) tally.samplesInside++;
    const blocks = blockingChecks(oracle.plan, model, probe, at).filter(({ rule }) => rule !== 'level');
    const isFree = blocks.length === 0;
    if (isIn !== spare > 0) wrong.push(`${x}, ${y}: ${isIn ? 'in' : 'not in'} the region, to spare ${spare}`);
    if (isFree !== spare > 0) {
      wrong.push(`${x}, ${y}: ${blocks.map(({ rule, subject }) => `${rule} ${subject}`)} block, to spare ${spare}`);
    }
  }
  wrong.push(...compareClear(oracle, model, probe, spots), ...compareZones(region, blockers, spots.slice(-8)));
  for (const at of spots.slice(0, 6)) wrong.push(...compareNearest(oracle, region, probe, blockers, at, inside, tally));
  return wrong;
}

/** Checks that nothing measured is tight in a region that keeps the tape tolerance in addition to the limits. */
function compareClear(oracle: OracleLevel, model: LevelModel, probe: Probe, spots: readonly XY[]): string[] {
  const { tapeTolerance } = oracle.plan;
  if (tapeTolerance === 0) return [];
  const region = levelRegion(oracle.plan, model, probe, { spare: tapeTolerance });
  return spots
    .filter((at) => region.rooms.some(({ rings }) => arcRingsContain(rings, at)))
    .flatMap((at) => {
      const alone = { ...oracle, level: { ...oracle.level, detectors: [] } };
      const rows = oracleRows(alone, { ...probe, id: '', label: '', at, pair: null });
      return rows.filter(({ margin }) => margin < tapeTolerance - BAND).map((row) => ({ at, row }));
    })
    .map(({ at, row }) => `${at}: held to be clear, and ${row.rule} ${row.subject} spares ${row.margin}`);
}

/**
 * Checks at each spot that the drawn zones are the zones that block. A wall may have one zone of several bodies, or several zones where other
 * walls run along it: they are taken together.
 */
function compareZones({ zones }: LevelRegion, blockers: readonly Blocker[], spots: readonly XY[]): string[] {
  const wrong: string[] = [];
  for (const zone of zones) {
    const own = blockers.filter(({ rule, body }) => {
      return rule === zone.rule && body.subject === zone.subject && body.stream === zone.keepOut;
    });
    // Of walls that coincide within a hundredth of a mm the engine may name the thinner one as well: its zone adds nothing.
    const others = own.length > 0 ? [] : blockers.filter(({ rule }) => rule === zone.rule);
    const adds = spots.some(
      (at) => arcRingsContain(zone.outlines, at) && others.every((one) => outsideOf(one, ...at) > BAND),
    );
    if (own.length === 0 && adds) wrong.push(`there is no zone of ${zone.rule} ${zone.subject}`);
    for (const [x, y] of spots) {
      const spare = Math.min(...own.map((one) => outsideOf(one, x, y)));
      if (own.length !== 1 || Math.abs(spare) < BAND) continue;
      const isIn = zones.some((one) => isNamedAs(one, zone) && arcRingsContain(one.outlines, [x, y]));
      if (isIn !== spare < 0)
        wrong.push(`${x}, ${y}: ${isIn ? 'in' : 'not in'} zone ${zone.rule} ${zone.subject}, ${spare}`);
    }
  }
  return wrong;
}

type Zone = LevelRegion['zones'][number];

function isNamedAs({ rule, subject, keepOut }: Zone, other: Zone): boolean {
  return rule === other.rule && subject === other.subject && keepOut === other.keepOut;
}

/** Returns whether a spot is so near to the edge of a floor that it may count as in the room or in the wall. */
function nearFloorEdge(oracle: OracleLevel, x: number, y: number): boolean {
  return oracle.walls.rooms.some((room) => depthInFloor(oracle, room, x, y) < BAND);
}

function thrownAnywhere({ level }: LevelModel, dice: Dice): XY[] {
  const ends = level.walls.flatMap(({ from, to }) => [from, to]);
  const xs = ends.map(([x]) => x);
  const ys = ends.map(([, y]) => y);
  const [left, right, top, bottom] = [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)];
  return Array.from({ length: EACH_WAY }, (): XY => [dice.between(left, right), dice.between(top, bottom)]);
}

/** Returns spots beside the boundary of the region and beside the outlines of the oracle's own zones, 0.02 to 5 mm away. */
function thrownAtEdges(region: LevelRegion, blockers: readonly Blocker[], dice: Dice): XY[] {
  const edges = region.rooms.flatMap(({ rings }) => rings.flat());
  return Array.from({ length: EACH_WAY }, (_, i): XY => {
    const aside = dice.pick([0.02, -0.02, 0.2, -0.2, 5, -5]);
    const edge = i % 2 === 0 && edges.length > 0 ? dice.pick(edges) : null;
    if (edge?.kind === 'arc') {
      const angle = edge.start + edge.sweep * dice.next();
      const out = edge.radius + aside;
      return [edge.center[0] + out * Math.cos(angle), edge.center[1] + out * Math.sin(angle)];
    }
    if (edge) {
      const t = dice.next();
      const [dx, dy] = [edge.to[0] - edge.from[0], edge.to[1] - edge.from[1]];
      const length = Math.hypot(dx, dy) || 1;
      return [edge.from[0] + dx * t - (dy / length) * aside, edge.from[1] + dy * t + (dx / length) * aside];
    }
    return besideZone(blockers, dice, aside);
  });
}

function besideZone(blockers: readonly Blocker[], dice: Dice, aside: number): XY {
  if (blockers.length === 0) return [0, 0];
  const { body, keep } = dice.pick(blockers);
  const { points, grow } = dice.pick(body.parts('even', 8));
  const [x, y] = dice.pick(points);
  const angle = dice.between(0, 2 * Math.PI);
  const out = keep + grow + aside;
  return [x + out * Math.cos(angle), y + out * Math.sin(angle)];
}

/** Checks that the nearest spot of the engine is free, has the given distance, and that no sampled spot of the region is nearer. */
function compareNearest(
  oracle: OracleLevel,
  region: LevelRegion,
  probe: Probe,
  blockers: readonly Blocker[],
  at: XY,
  inside: readonly XY[],
  tally: Tally,
): string[] {
  const spot = nearestSpot(region, at);
  const away = (p: XY) => Math.hypot(p[0] - at[0], p[1] - at[1]);
  const least = Math.min(...inside.map(away));
  if (!spot) return inside.length > 0 ? [`no spot near ${at}, yet ${inside.length} are free`] : [];
  tally.nearest++;
  const wrong: string[] = [];
  if (Math.abs(away(spot.at) - spot.distance) > CLOSE)
    wrong.push(`spot near ${at}: ${spot.distance} off, not ${away(spot.at)}`);
  if (least < spot.distance - CLOSE) wrong.push(`spot near ${at}: ${spot.distance} off, and there is one ${least} off`);
  const spare = spareAt(oracle, probe, blockers, spot.at[0], spot.at[1]);
  if (spare < -CLOSE) wrong.push(`spot near ${at} is blocked: to spare ${spare}`);
  return wrong;
}
