import type { Detector, Level, Plan, Shape } from '../../geometry/plan/model.ts';
import { boxRing, type Cylinder, type OracleBody } from './bodies.ts';
import type { Point } from './geos.ts';
import type { OracleLevel } from './geos-oracle.ts';
import { offSegment } from './plane.ts';

/** The table of limits of the plan format, section 3, inches. */
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
/** "A distance meets its limit when measured ≥ required − 0.1." */
export const SHORTFALL = 0.1;

export interface OracleRow {
  readonly rule: string;
  readonly subject: string | null;
  readonly required: number;
  readonly measured: number;
  readonly margin: number;
  readonly stream: boolean;
  /** What it was measured to: of several pieces of one wall those that are as near. Empty for heights and companions. */
  readonly bodies: readonly OracleBody[];
}

/** What a rule asks for, mm, with the plan's override. */
export function required({ protocol }: Plan, rule: string, inches = LIMITS[rule] ?? Number.NaN): number {
  return protocol.overrides.find((one) => one.rule === rule)?.distance ?? inches * INCH;
}

/** Section 2, points 3 and 4; null where the thing never counts. A stream keeps its sign. */
function measured(rule: string, body: OracleBody, probe: Cylinder, x: number, y: number): number | null {
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
      rows.push({ rule, subject, required: asks, measured: got, margin: got - asks, stream, bodies: near });
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
      return { rule: 'companion', subject: other.id, measured: got, stream: false, bodies: [], ...near };
    });
}

/** The foot within 3 mm of the top of an object, and wholly over its outline. */
export function isCarried({ objects }: Level, { at, base, radius, support }: Detector): boolean {
  if (support) return true;
  return objects.some(({ shape, top }) => Math.abs(top - base) <= 3 && footIsOn(shape, at, radius - SHORTFALL));
}

/** By the corners: inside, and every side farther than the radius; a round one by its middle. */
function footIsOn(shape: Shape, [x, y]: readonly [number, number], radius: number): boolean {
  if ('circle' in shape) {
    const { center, radius: all } = shape.circle;
    return Math.hypot(x - center[0], y - center[1]) + radius <= all;
  }
  const ring = 'box' in shape ? boxRing(shape.box) : shape.polygon.points;
  let turns = 0;
  for (const [i, a] of ring.entries()) {
    const b = ring[(i + 1) % ring.length] as Point;
    if (offSegment([x, y], a, b) < radius) return false;
    const [from, to] = [Math.atan2(a[1] - y, a[0] - x), Math.atan2(b[1] - y, b[0] - x)];
    turns += Math.atan2(Math.sin(to - from), Math.cos(to - from));
  }
  return Math.abs(turns) > Math.PI;
}
