import type { Detector, FixtureKind, Level, Plan } from '../../geometry/plan/model.ts';
import { type Cylinder, type OracleBody, openingBodies, shapeBody, streamOf, wallBodies } from './bodies.ts';
import type { Geos } from './geos.ts';
import { type OracleRoom, type OracleWalls, oracleWalls } from './walls.ts';

/** Table of plan-format.md, section 3, inches. */
const INCH = 25.4;
const LIMITS: Readonly<Record<string, number>> = {
  'outside-opening': 36,
  'outside-wall': 12,
  'moving-air': 36,
  heat: 48,
  sump: 84,
  'floor-drain': 36,
  object: 4,
};
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
/** "A distance meets its limit when measured ≥ required − 0.1." */
export const SHORTFALL = 0.1;

export interface OracleRow {
  readonly rule: string;
  readonly subject: string | null;
  readonly required: number;
  readonly measured: number;
  readonly margin: number;
  readonly stream: boolean;
}

/** A level as the oracle sees it. */
export interface OracleLevel {
  readonly geos: Geos;
  readonly plan: Plan;
  readonly level: Level;
  readonly walls: OracleWalls;
  /** The bodies of every rule that measures a distance to one. */
  readonly bodies: ReadonlyMap<string, readonly OracleBody[]>;
  readonly hasOutsideOpening: boolean;
}

export function oracleLevel(geos: Geos, plan: Plan, level: Level): OracleLevel {
  const walls = oracleWalls(geos, level);
  const fixtures = (kinds: readonly FixtureKind[]) =>
    level.fixtures.filter(({ kind }) => kinds.includes(kind)).map(({ id, shape }) => shapeBody(geos, id, shape));
  const streams = level.fixtures
    .filter(({ kind, stream }) => stream && AIR.includes(kind))
    .flatMap((fixture) => (fixture.stream ? [streamOf(geos, fixture, fixture.stream)] : []));
  const objects = level.objects.map((one) => ({
    ...shapeBody(geos, one.id, one.shape),
    bottom: one.bottom,
    top: one.top,
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
      ['object', [...objects, ...wallBodies(geos, walls, false)]],
    ]),
  };
}

/** What a rule asks for, mm, with the plan's override. */
export function required({ protocol }: Plan, rule: string, inches = LIMITS[rule] ?? Number.NaN): number {
  return protocol.overrides.find((one) => one.rule === rule)?.distance ?? inches * INCH;
}

/** Section 2, points 3 and 4; null where the thing never counts. A stream keeps its sign. */
export function measured(rule: string, body: OracleBody, probe: Cylinder, x: number, y: number): number | null {
  const toRim = body.distance(x, y) - probe.radius;
  if (body.stream) return toRim;
  const inPlan = Math.max(0, toRim);
  if (rule !== 'object') return inPlan;
  if (body.top <= probe.base) return null;
  return Math.hypot(inPlan, Math.max(0, body.bottom - (probe.base + probe.tall)));
}

/** Every rule with every subject, the nearest body of each: what the report is picked from. */
export function oracleRows(oracle: OracleLevel, detector: Detector): OracleRow[] {
  const { plan, level } = oracle;
  const rows: OracleRow[] = [];
  const add = (rule: string, subject: string | null, asks: number, got: number, most = false, stream = false) => {
    rows.push({ rule, subject, required: asks, measured: got, margin: most ? asks - got : got - asks, stream });
  };
  const over = detector.base + detector.tall;
  add('height-band', null, 20 * INCH, detector.base);
  add('height-band', null, 72 * INCH, over, true);
  add('ceiling', null, required(plan, 'ceiling', 12), level.ceiling - over);
  const [x, y] = detector.at;
  for (const [rule, bodies] of oracle.bodies) {
    const nearest = new Map<string, { got: number; body: OracleBody }>();
    for (const body of bodies) {
      const got = measured(rule, body, detector, x, y);
      const key = `${body.subject}${body.stream ? ' stream' : ''}`;
      if (got !== null && got < (nearest.get(key)?.got ?? Number.POSITIVE_INFINITY)) nearest.set(key, { got, body });
    }
    for (const { got, body } of nearest.values()) {
      add(rule, body.subject, body.stream ? 0 : required(plan, rule), got, false, body.stream);
    }
  }
  rows.push(...companionRows(level, detector));
  return rows;
}

/** Rim to rim, straight, 4 to 8 inches: of both limits the one that is nearer to being broken. */
function companionRows(level: Level, { id, at, radius, pair }: Detector): OracleRow[] {
  if (pair === null) return [];
  return level.detectors
    .filter((other) => other.id !== id && other.pair === pair)
    .map((other) => {
      const got = Math.max(0, Math.hypot(other.at[0] - at[0], other.at[1] - at[1]) - radius - other.radius);
      const [low, high] = [got - 4 * INCH, 8 * INCH - got];
      const near = low <= high ? { required: 4 * INCH, margin: low } : { required: 8 * INCH, margin: high };
      return { rule: 'companion', subject: other.id, measured: got, stream: false, ...near };
    });
}

/** Whether the level is the one to test: the lowest that is lived in, in a sale that could be. */
export function isLevelToTest({ levels, site }: Plan, level: Level): boolean {
  const counts = ({ living }: Level) =>
    living === 'lived-in' || (site.purpose === 'property-transfer' && living === 'could-be');
  return counts(level) && levels.every((other) => !counts(other) || other.order >= level.order);
}

export type RoomVerdict = 'clear' | 'blocked' | 'unknown';

/** The room whose floor holds a point, and what `room-use` says of its labels. */
export function roomAt({ geos, walls }: OracleLevel, x: number, y: number): OracleRoom | null {
  return walls.rooms.find(({ floor }) => geos.holds(floor, x, y)) ?? null;
}

export function labelsOf({ geos, level }: OracleLevel, room: OracleRoom) {
  return level.rooms.filter(({ at }) => geos.holds(room.face, at[0], at[1]));
}

export function verdictOfUse(oracle: OracleLevel, room: OracleRoom | null): RoomVerdict {
  if (!room) return 'blocked';
  const labels = labelsOf(oracle, room);
  const allowed = labels.filter(({ use }) => MAY_HOLD.includes(use));
  if (labels.length > 0 && allowed.length === labels.length) return 'clear';
  return labels.length > 0 && allowed.length === 0 ? 'blocked' : 'unknown';
}

/** How far a point lies inside the floor of its room (0 when it lies in none). */
export function depthInFloor({ geos }: OracleLevel, room: OracleRoom | null, x: number, y: number): number {
  return room ? geos.distanceTo(geos.boundary(room.floor), x, y) : 0;
}
