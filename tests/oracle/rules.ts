import type { Detector, Level, Plan, Shape } from '../../geometry/plan/model.ts';
import { boxRing, type Cylinder, type OracleBody } from './bodies.ts';
import type { Point } from './geos.ts';
import { type OracleLevel, roomAt } from './geos-oracle.ts';
import { offSegment } from './plane.ts';

const INCH = 25.4;
/** The limits of new plans, inches, independent of the engine's table. */
const LIMITS: Readonly<Record<string, number>> = {
  'outside-opening': 36,
  'outside-wall': 12,
  'moving-air': 36,
  heat: 48,
  sump: 84,
  'floor-drain': 36,
  'washer-dryer': 120,
  object: 4,
};
/** A distance meets its limit when measured ≥ required − this, mm. */
export const SHORTFALL = 0.1;

export interface OracleRow {
  readonly rule: string;
  readonly subject: string | null;
  readonly required: number;
  readonly measured: number;
  readonly margin: number;
  readonly stream: boolean;
  /** Blocked whatever the distance: the detector is inside the body, or the pair is not in one room at one height. */
  readonly blocked?: boolean;
  /** The bodies that it was measured to: of several pieces of one wall those that are equally near. Empty for heights and companions. */
  readonly bodies: readonly OracleBody[];
}

/** Returns the distance that a rule requires, mm, with the plan's override. */
export function required({ protocol }: Plan, rule: string, inches = LIMITS[rule] ?? Number.NaN): number {
  return protocol.overrides.find((one) => one.rule === rule)?.distance ?? inches * INCH;
}

/**
 * Returns the distance from the rim, in plan and 0 inside the body; for an object in space, with the height between its underside and the
 * detector's top. Null if the object ends below the detector or supports it. For a stream negative inside.
 */
function measured(rule: string, body: OracleBody, probe: Cylinder, x: number, y: number): number | null {
  const toRim = body.distance(x, y) - probe.radius;
  if (body.stream) return toRim;
  const inPlan = Math.max(0, toRim);
  if (rule !== 'object') return inPlan;
  if (body.top <= probe.base || (body.carrier && carriesFoot(body.carrier, body.top, probe, [x, y]))) return null;
  return Math.hypot(inPlan, Math.max(0, body.bottom - (probe.base + probe.tall)));
}

/** Returns whether the detector is inside a body at its height: by more than the shortfall, in plan and in height. */
function isInside(body: OracleBody, probe: Cylinder, x: number, y: number): boolean {
  return sharesHeight(body, probe) && body.distance(x, y) < probe.radius - SHORTFALL;
}

export function sharesHeight(
  { solid = false, bottom, top }: Pick<OracleBody, 'solid' | 'bottom' | 'top'>,
  { base, tall }: Cylinder,
): boolean {
  return solid && Math.min(top, base + tall) - Math.max(bottom, base) > SHORTFALL;
}

/** Returns the rows of every rule with every subject, for the nearest body of each. The report contains some of them. */
export function oracleRows(oracle: OracleLevel, detector: Detector): OracleRow[] {
  const { plan, level } = oracle;
  const rows: OracleRow[] = [];
  const add = (rule: string, asks: number, got: number, most = false) => {
    const margin = most ? asks - got : got - asks;
    rows.push({ rule, subject: null, required: asks, measured: got, margin, stream: false, bodies: [] });
  };
  const over = detector.base + detector.tall;
  add('height-band', 20 * INCH, detector.base);
  add('height-band', 72 * INCH, over, true);
  add('ceiling', required(plan, 'ceiling', 12), level.ceiling - over);
  const [x, y] = detector.at;
  for (const [rule, bodies] of oracle.bodies) {
    const nearest = new Map<string, { got: number; bodies: OracleBody[] }>();
    for (const body of bodies) {
      const got = measured(rule, body, detector, x, y);
      if (got === null) continue;
      const key = `${body.subject}${body.stream ? ' stream' : ''}`;
      const known = nearest.get(key);
      if (!known || got < known.got) nearest.set(key, { got, bodies: [body] });
      else if (got === known.got) known.bodies.push(body);
    }
    for (const { got, bodies: near } of nearest.values()) {
      const [{ subject, stream }] = near as [OracleBody];
      const asks = stream ? 0 : required(plan, rule);
      const blocked = near.some((body) => isInside(body, detector, x, y));
      rows.push({ rule, subject, required: asks, measured: got, margin: got - asks, stream, bodies: near, blocked });
    }
  }
  rows.push(...otherRows(oracle, detector), ...companionRows(oracle, detector));
  return rows;
}

/** Returns the rows of other detectors: those of another pair count as objects, those of the same pair only if they intersect. */
function otherRows({ plan, level }: OracleLevel, detector: Detector): OracleRow[] {
  const { id, at, base, tall, radius, pair } = detector;
  return level.detectors.flatMap((other): OracleRow[] => {
    if (other.id === id || other.base + other.tall <= base) return [];
    const apart = Math.hypot(other.at[0] - at[0], other.at[1] - at[1]) - other.radius;
    const body = { solid: true, bottom: other.base, top: other.base + other.tall };
    const blocked = sharesHeight(body, detector) && Math.max(0, apart) < radius - SHORTFALL;
    if (pair !== null && pair === other.pair && !blocked) return [];
    const got = Math.hypot(Math.max(0, apart - radius), Math.max(0, other.base - base - tall));
    const asks = required(plan, 'object');
    return [
      {
        rule: 'object',
        subject: other.id,
        required: asks,
        measured: got,
        margin: got - asks,
        stream: false,
        bodies: [],
        blocked,
      },
    ];
  });
}

/** Rim to rim, straight, 4 to 8 inches: returns the limit with the smaller margin; in one room, within 102 mm of height. */
function companionRows(oracle: OracleLevel, { id, at, radius, pair, base }: Detector): OracleRow[] {
  if (pair === null) return [];
  const home = roomAt(oracle, ...at);
  return oracle.level.detectors
    .filter((other) => other.id !== id && other.pair === pair)
    .map((other) => {
      const got = Math.max(0, Math.hypot(other.at[0] - at[0], other.at[1] - at[1]) - radius - other.radius);
      const [low, high] = [got - 4 * INCH, 8 * INCH - got];
      const near = low <= high ? { required: 4 * INCH, margin: low } : { required: 8 * INCH, margin: high };
      const together = home !== null && roomAt(oracle, ...other.at) === home;
      const blocked = !together || Math.abs(other.base - base) > 102 + SHORTFALL;
      return { rule: 'companion', subject: other.id, measured: got, stream: false, bodies: [], blocked, ...near };
    });
}

/** Returns whether an object supports the detector: its base within 3 mm of the top, the whole footprint on the outline. */
export function isCarried({ objects }: Level, { at, base, radius, support }: Detector): boolean {
  if (support) return true;
  return objects.some(({ shape, top }) => carriesFoot(shape, top, { base, radius }, at));
}

function carriesFoot(
  shape: Shape,
  top: number,
  { base, radius }: Pick<Cylinder, 'base' | 'radius'>,
  at: readonly [number, number],
): boolean {
  return Math.abs(top - base) <= 3 && depthIn(shape, at) >= Math.max(0, radius - SHORTFALL);
}

/** Returns how far a point is inside an outline, mm; negative outside. Uses the turns of the corners around it, and its sides. */
export function depthIn(shape: Shape, [x, y]: readonly [number, number]): number {
  if ('circle' in shape)
    return shape.circle.radius - Math.hypot(x - shape.circle.center[0], y - shape.circle.center[1]);
  const ring = 'box' in shape ? boxRing(shape.box) : shape.polygon.points;
  let turns = 0;
  let near = Number.POSITIVE_INFINITY;
  for (const [i, a] of ring.entries()) {
    const b = ring[(i + 1) % ring.length] as Point;
    near = Math.min(near, offSegment([x, y], a, b));
    const [from, to] = [Math.atan2(a[1] - y, a[0] - x), Math.atan2(b[1] - y, b[0] - x)];
    turns += Math.atan2(Math.sin(to - from), Math.cos(to - from));
  }
  return Math.abs(turns) > Math.PI ? near : -near;
}
