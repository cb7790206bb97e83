import type { ArcRing } from '../../geometry/arrangement/types.ts';
import type { LevelModel, Room } from '../../geometry/level/types.ts';
import { levelRegion } from '../../geometry/region/level-region.ts';
import { edgeEnds } from '../../geometry/region/nearest.ts';
import type { Probe } from '../../geometry/region/types.ts';
import type { Clipper } from './clipper.ts';
import type { OracleRoom } from './floors.ts';
import type { OracleLevel } from './geos-oracle.ts';
import { blockersOf, roomRegion, zonesFor } from './region.ts';
import type { Tally } from './tally.ts';

/** Number of chords per quarter turn. With outlines of equal area, the region is accurate to about 1 part in 100,000. */
const CHORDS = 64;
/** Number of chords per quarter turn for the two areas that enclose the true area; the engine's area must be between them. */
const BRACKET_CHORDS = 512;
/**
 * Tolerance, mm²: the share below of the area, at least this. A region of a few cm² between two curves deviates by more than the share
 * if chords of 1/64 quarter turn replace the curves (0.05 mm over half a meter on either side).
 */
const ABSOLUTE = 50;
const SHARE = 1e-3;
/** Tolerance for floors, mm²: their edges are straight, so only rounding and noding on a grid of 1e-4 mm remain. */
const FLOOR_ABSOLUTE = 1;

/** Greatest gap in a ring, mm: parts shorter than half of this are omitted from the rings, as `linkRings` documents. */
const JOINT = 1e-3;
/** Tolerance for floors with Clipper, mm²: it rounds every corner to 1e-4 mm, which changes a floor with a perimeter of 100 m by less. */
const CLIPPER_FLOOR = 10;

/** Returns pairs of rooms; throws when the engine and the oracle do not have the same rooms. */
function pairedRooms({ geos, walls }: OracleLevel, model: LevelModel): [Room, OracleRoom][] {
  const pairs = model.rooms.map((room): [Room, OracleRoom] => {
    const [x, y] = room.labelPoint;
    const found = walls.rooms.filter(({ floor }) => geos.holds(floor, x, y));
    const [own] = found;
    if (!own || found.length > 1) throw new Error(`${found.length} rooms at ${x}, ${y}, not 1`);
    return [room, own];
  });
  if (new Set(pairs.map(([, own]) => own)).size !== walls.rooms.length) {
    throw new Error(`${model.rooms.length} rooms, not ${walls.rooms.length}`);
  }
  return pairs;
}

/** Compares floors and regions of every room, with `strict` also the bracket. Returns the differences in words. */
export function compareAreas(
  oracle: OracleLevel,
  model: LevelModel,
  probe: Probe,
  strict: boolean,
  tally: Tally,
): string[] {
  const { geos } = oracle;
  const wrong: string[] = [];
  const region = levelRegion(oracle.plan, model, probe);
  const blockers = blockersOf(oracle, probe);
  for (const [room, own] of pairedRooms(oracle, model)) {
    tally.rooms++;
    tally.floors++;
    const off = Math.abs(room.floorArea - own.floorArea);
    tally.worstFloor = Math.max(tally.worstFloor, off);
    if (!(off <= FLOOR_ABSOLUTE)) wrong.push(`floor of ${room.key}: ${room.floorArea}, not ${own.floorArea}`);
    const got = region.rooms.find((one) => one.room === room)?.area ?? Number.NaN;
    const area = (rounding: 'inside' | 'outside' | 'even', chords: number) => {
      const free = roomRegion(oracle, own, probe, blockers, rounding, chords);
      return free.reduce((sum, part) => sum + geos.measure(part), 0);
    };
    const want = area('even', CHORDS);
    tally.regions++;
    if (want > 0 || got > 0) tally.openRegions++;
    tally.worstRegion = Math.max(tally.worstRegion, Math.abs(got - want));
    if (want > 1e5) tally.worstRegionShare = Math.max(tally.worstRegionShare, Math.abs(got - want) / want);
    if (!(Math.abs(got - want) <= Math.max(ABSOLUTE, SHARE * want))) {
      wrong.push(`region of ${room.key}: ${got}, not ${want}`);
    }
    wrong.push(...compareRings(region.rooms.find((one) => one.room === room)?.rings ?? [], got, room.key));
    if (!strict || want === 0) continue;
    const [low, high] = [area('outside', BRACKET_CHORDS), area('inside', BRACKET_CHORDS)];
    if (!(got >= low - 1 && got <= high + 1)) wrong.push(`region of ${room.key}: ${got}, not ${low} to ${high}`);
  }
  return wrong;
}

/** Checks that every ring is closed, and that the rings together enclose the given area. Returns the differences in words. */
function compareRings(rings: readonly ArcRing[], area: number, key: string): string[] {
  let enclosed = 0;
  let length = 0;
  let widest = 0;
  for (const ring of rings) {
    ring.forEach((edge, i) => {
      const [from, to] = edgeEnds(edge);
      const [next] = edgeEnds(ring[(i + 1) % ring.length] ?? edge);
      widest = Math.max(widest, Math.hypot(next[0] - to[0], next[1] - to[1]));
      length +=
        edge.kind === 'line' ? Math.hypot(to[0] - from[0], to[1] - from[1]) : edge.radius * Math.abs(edge.sweep);
      enclosed += (from[0] * to[1] - to[0] * from[1]) / 2;
      // The area between the chord and the arc.
      if (edge.kind === 'arc') enclosed += (edge.radius ** 2 * (edge.sweep - Math.sin(edge.sweep))) / 2;
    });
  }
  const wrong: string[] = [];
  if (widest > JOINT) wrong.push(`rings of ${key} gape by ${widest}`);
  if (!(Math.abs(enclosed - area) <= 1 + length * JOINT))
    wrong.push(`rings of ${key} enclose ${enclosed}, not ${area}`);
  return wrong;
}

/**
 * Compares the same areas with another library: floor and region of every room, from the oracle's bodies and zones in one
 * step. Returns the differences from the engine in words.
 */
export function compareWithClipper(oracle: OracleLevel, model: LevelModel, probe: Probe, clipper: Clipper): string[] {
  const { geos, walls } = oracle;
  const wrong: string[] = [];
  const region = levelRegion(oracle.plan, model, probe);
  const blockers = blockersOf(oracle, probe);
  const standing = walls.pieces.flatMap(({ parts }) => parts.flatMap((part) => geos.areas(part).flat()));
  for (const [room, own] of pairedRooms(oracle, model)) {
    const floor = clipper.areaLeft(own.rings, standing);
    if (!(Math.abs(room.floorArea - floor) <= CLIPPER_FLOOR)) {
      wrong.push(`floor of ${room.key}: ${room.floorArea}, clipper has ${floor}`);
    }
    const found = region.rooms.find((one) => one.room === room);
    // Only zones without holes are compared with Clipper.
    if (!found || found.barred || blockers.some(({ onTop }) => onTop !== null)) continue;
    const zones = zonesFor(oracle, own, probe, blockers, 'even', CHORDS).filter((ring) => ring.length > 2);
    const left = clipper.areaLeft(own.rings, [...standing, ...zones]);
    if (!(Math.abs(found.area - left) <= Math.max(ABSOLUTE, SHARE * left))) {
      wrong.push(`region of ${room.key}: ${found.area}, clipper has ${left}`);
    }
  }
  return wrong;
}
