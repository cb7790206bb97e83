import type { FixtureKind, Level, Plan } from '../../geometry/plan/model.ts';
import { type OracleBody, openingBodies, shapeBody, streamOf, wallBodies } from './bodies.ts';
import type { OracleRoom } from './floors.ts';
import type { Geos } from './geos.ts';
import { type OracleWalls, oracleWalls } from './walls.ts';

/* Fixture kinds by rule, and the room uses that may contain a detector, independent of the engine's lists. */
const AIR: readonly FixtureKind[] = [
  'supply-register',
  'return-grille',
  'exhaust-fan',
  'ceiling-fan',
  'portable-fan',
  'window-air-conditioner',
  'air-cleaner',
  'dehumidifier',
  'humidifier',
];
const HEAT: readonly FixtureKind[] = [
  'furnace',
  'boiler',
  'water-heater',
  'fireplace',
  'wood-stove',
  'radiator',
  'space-heater',
];
const MAY_HOLD: readonly string[] = [
  'family-room',
  'living-room',
  'bedroom',
  'playroom',
  'den',
  'office',
  'exercise-room',
  'workshop',
  'dining-room',
  'unfinished',
];

/** A level in the oracle. */
export interface OracleLevel {
  readonly geos: Geos;
  readonly plan: Plan;
  readonly level: Level;
  readonly walls: OracleWalls;
  /** The bodies of every rule that measures a distance to bodies. */
  readonly bodies: ReadonlyMap<string, readonly OracleBody[]>;
  readonly hasOutsideOpening: boolean;
}

export function oracleLevel(geos: Geos, plan: Plan, level: Level): OracleLevel {
  const walls = oracleWalls(geos, level);
  const fixtures = (kinds: readonly FixtureKind[]) =>
    level.fixtures
      .filter(({ kind }) => kinds.includes(kind))
      .map(({ id, shape, bottom, top }) => ({ ...shapeBody(geos, id, shape), bottom, top, solid: true }));
  const streams = level.fixtures.flatMap((fixture) =>
    fixture.stream ? [streamOf(geos, fixture, fixture.stream)] : [],
  );
  const objects = level.objects.map((one) => ({
    ...shapeBody(geos, one.id, one.shape),
    bottom: one.bottom,
    top: one.top,
    solid: true,
    carrier: one.shape,
  }));
  const openings = openingBodies(geos, level, walls);
  return {
    geos,
    plan,
    level,
    walls,
    hasOutsideOpening: openings.length > 0,
    bodies: new Map([
      ['outside-opening', openings],
      ['outside-wall', wallBodies(geos, walls, true)],
      ['moving-air', [...fixtures(AIR), ...streams]],
      ['heat', fixtures(HEAT)],
      ['sump', fixtures(['sump-pit'])],
      ['floor-drain', fixtures(['floor-drain'])],
      ['washer-dryer', fixtures(['washer', 'dryer'])],
      ['object', [...objects, ...fixtures(['mitigation-pipe']), ...wallBodies(geos, walls, false)]],
    ]),
  };
}

/** Returns whether the level is to be tested: the lowest that is lived in, or in a property transfer could be. */
export function isLevelToTest({ levels, site }: Plan, level: Level): boolean {
  const counts = ({ living }: Level) =>
    living === 'lived-in' || (site.purpose === 'property-transfer' && living === 'could-be');
  return counts(level) && levels.every((other) => !counts(other) || other.order >= level.order);
}

export type RoomVerdict = 'clear' | 'blocked' | 'unknown';

/** Returns the room whose floor contains a point. */
export function roomAt({ geos, walls }: OracleLevel, x: number, y: number): OracleRoom | null {
  return walls.rooms.find(({ floor }) => geos.holds(floor, x, y)) ?? null;
}

export function labelsOf({ geos, level }: OracleLevel, room: OracleRoom) {
  return level.rooms.filter(({ at }) => geos.holds(room.face, at[0], at[1]));
}

export function verdictOfUse(oracle: OracleLevel, room: OracleRoom | null): RoomVerdict {
  if (!room) return 'blocked';
  const verdict = VERDICTS.get(room) ?? verdictOfLabels(oracle, room);
  VERDICTS.set(room, verdict);
  return verdict;
}

/** Verdicts cached by room, because they are needed at many places. A room belongs to one level. */
const VERDICTS = new WeakMap<OracleRoom, RoomVerdict>();

function verdictOfLabels(oracle: OracleLevel, room: OracleRoom): RoomVerdict {
  const labels = labelsOf(oracle, room);
  const allowed = labels.filter(({ use }) => MAY_HOLD.includes(use));
  if (labels.length > 0 && allowed.length === labels.length) return 'clear';
  return labels.length > 0 && allowed.length === 0 ? 'blocked' : 'unknown';
}

/** Returns how far a point is inside the floor of its room, mm; 0 when it is in none. */
export function depthInFloor({ geos }: OracleLevel, room: OracleRoom | null, x: number, y: number): number {
  return room ? geos.distanceTo(room.edge, x, y) : 0;
}
