import {
  heightBetween,
  isWall,
  LIMIT_TOLERANCE,
  type Subject,
  sharesHeight,
  subjectsOf,
} from '../../check/subjects.ts';
import type { LevelModel } from '../../level/types.ts';
import type { Mm, Plan } from '../../plan/model.ts';
import type { Body } from '../../plane/body.ts';
import { signedArea } from '../../plane/ring.ts';
import type { Probe } from '../../region/types.ts';
import { effectiveRules } from '../../rules/profiles.ts';
import type { RuleId } from '../../rules/types.ts';

/** What leaves the least margin at a point. */
export interface Limit {
  readonly rule: RuleId;
  readonly subject: string;
  /** Whether it is the subject's stream of air. */
  readonly stream: boolean;
}

type RingBody = Extract<Body, { kind: 'ring' }>;

/**
 * The margins of a level taken apart into the simplest pieces whose least is the margin, in flat arrays: `STRIDE` numbers
 * each, lengths in mm.
 *
 * - `SEGMENT`: from (0, 1), run (2, 3), one over its squared length (4; 0 for a point), offset (5), floor (6). Its margin
 *   is the distance from the axis less the offset, but never below the floor.
 * - `HANGING`: the same with a height (7): the distance in space to something above, less what is required.
 * - `INSIDE`: the floor (6) within a body. Outside of it its edges, pieces of their own, are what is near.
 * - `SECTOR`: apex (0, 1), direction (2, 3), cosine and sine of half the spread (4, 5), reach (6), radius of the probe (7):
 *   the distance of the rim to a stream of air, negative within it.
 */
export interface Primitives {
  readonly count: number;
  readonly kind: Uint8Array;
  readonly data: Float64Array;
  /** Which of the limits each belongs to. */
  readonly owner: Int32Array;
  /** The body of an `INSIDE` piece, by its limit. */
  readonly bodies: readonly Body[];
  /** In the order of the profile, and of the level within a rule. */
  readonly limits: readonly Limit[];
}

export const STRIDE = 8;
export const SEGMENT = 0;
export const HANGING = 1;
export const INSIDE = 2;
export const SECTOR = 3;

/** A subject that counts at the probe's height. A stream has no floor: its margin goes on below zero with the depth within. */
interface Entry {
  readonly body: Body;
  readonly limit: Limit;
  readonly required: Mm;
  readonly height: Mm;
  readonly floor: Mm;
}

/**
 * Every distance rule of the plan against every subject on the level.
 *
 * @param carriers ids of objects that carry the probe and are not in its way
 */
export function levelPrimitives(
  plan: Plan,
  model: LevelModel,
  probe: Probe,
  carriers: readonly string[] = [],
): Primitives {
  const entries = levelEntries(plan, model, probe, carriers);
  let count = 0;
  for (const { body } of entries) count += piecesOf(body);
  const writer = new Writer(count, probe.radius);
  entries.forEach((entry, owner) => {
    writer.addEntry(entry, owner);
  });
  const { kind, data, owner } = writer;
  return {
    count,
    kind,
    data,
    owner,
    bodies: entries.map(({ body }) => body),
    limits: entries.map(({ limit }) => limit),
  };
}

/** A ring without area, mm², is its edges: a box without depth, say. Nothing lies within. */
const LEAST_AREA = 1e-6;

function hasInside({ ring }: RingBody): boolean {
  return signedArea(ring) > LEAST_AREA;
}

function piecesOf(body: Body): number {
  if (body.kind !== 'ring') return 1;
  return body.flat.length / 2 + (hasInside(body) ? 1 : 0);
}

function levelEntries(plan: Plan, model: LevelModel, probe: Probe, carriers: readonly string[]): Entry[] {
  const entries: Entry[] = [];
  for (const rule of effectiveRules(plan.protocol)) {
    let last: Body | null = null;
    for (const subject of subjectsOf(rule, model)) {
      const { body, id, stream } = subject;
      // A joint stands in the list once for each of its walls.
      if (isWall(subject) && body === last) continue;
      last = body;
      if (subject.what === 'object' && carriers.includes(id)) continue;
      const limit = { rule: rule.id, subject: id, stream };
      if (stream) entries.push({ body, limit, required: 0, height: 0, floor: Number.NEGATIVE_INFINITY });
      if (stream) continue;
      const required = rule.least ?? 0;
      // Of a limit that forgives the touch itself the depth within the body is left, which no check forgives.
      if (required <= LIMIT_TOLERANCE && sharesHeight(subject, probe)) {
        entries.push({ body, limit, required: 0, height: 0, floor: -probe.radius });
      } else if (rule.least !== null) {
        const height = heightOf(subject, rule.measured === 'space', probe);
        if (height !== null) entries.push({ body, limit, required, height, floor: height - required });
      }
    }
  }
  return entries;
}

function heightOf(subject: Subject, inSpace: boolean, probe: Probe): Mm | null {
  return inSpace ? heightBetween(subject, probe) : 0;
}

class Writer {
  readonly kind: Uint8Array;
  readonly data: Float64Array;
  readonly owner: Int32Array;
  private readonly radius: Mm;
  private next = 0;

  constructor(count: number, radius: Mm) {
    this.kind = new Uint8Array(count);
    this.data = new Float64Array(count * STRIDE);
    this.owner = new Int32Array(count);
    this.radius = radius;
  }

  addEntry(entry: Entry, owner: number): void {
    const { body } = entry;
    if (body.kind === 'disc') this.addRound(entry, owner, body.x, body.y, 0, 0, body.radius);
    else if (body.kind === 'ring') this.addRing(entry, owner, body);
    else this.addSector(entry, owner, body);
  }

  private addRing(entry: Entry, owner: number, body: RingBody): void {
    const { flat } = body;
    let ax = flat[flat.length - 2] as number;
    let ay = flat[flat.length - 1] as number;
    for (let i = 0; i < flat.length; i += 2) {
      const bx = flat[i] as number;
      const by = flat[i + 1] as number;
      this.addRound(entry, owner, ax, ay, bx - ax, by - ay, 0);
      ax = bx;
      ay = by;
    }
    if (hasInside(body)) this.write(INSIDE, owner, 0, 0, 0, 0, 0, 0, entry.floor, 0);
  }

  private addSector(entry: Entry, owner: number, body: Extract<Body, { kind: 'sector' }>): void {
    const { x, y, direction, half, reach } = body;
    const ux = Math.cos(direction);
    const uy = Math.sin(direction);
    // Without a spread it is a line.
    if (half === 0) this.addRound(entry, owner, x, y, ux * reach, uy * reach, 0);
    else this.write(SECTOR, owner, x, y, ux, uy, Math.cos(half), Math.sin(half), reach, this.radius);
  }

  /** A segment, or a point, that is `own` thick on either side. */
  private addRound(entry: Entry, owner: number, x: Mm, y: Mm, dx: Mm, dy: Mm, own: Mm): void {
    const { required, height, floor } = entry;
    const lengthSq = dx * dx + dy * dy;
    const inverse = lengthSq > 0 ? 1 / lengthSq : 0;
    const touching = own + this.radius;
    if (height > 0) this.write(HANGING, owner, x, y, dx, dy, inverse, touching, floor, height);
    else this.write(SEGMENT, owner, x, y, dx, dy, inverse, touching + required, floor, 0);
  }

  private write(
    kind: number,
    owner: number,
    n0: number,
    n1: number,
    n2: number,
    n3: number,
    n4: number,
    n5: number,
    n6: number,
    n7: number,
  ): void {
    const { data } = this;
    const k = this.next * STRIDE;
    this.kind[this.next] = kind;
    this.owner[this.next] = owner;
    this.next++;
    data[k] = n0;
    data[k + 1] = n1;
    data[k + 2] = n2;
    data[k + 3] = n3;
    data[k + 4] = n4;
    data[k + 5] = n5;
    data[k + 6] = n6;
    data[k + 7] = n7;
  }
}
