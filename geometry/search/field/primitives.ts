import { ruleSubjects } from '../../check/rule-subjects.ts';
import { heightBetween, isWall, type Subject, sharesHeight } from '../../check/subjects.ts';
import type { LevelModel } from '../../level/types.ts';
import type { Mm, Plan } from '../../plan/model.ts';
import { type Body, flatArea } from '../../plane/body.ts';
import { LIMIT_TOLERANCE } from '../../plane/tolerances.ts';
import type { Probe } from '../../region/types.ts';
import { effectiveRules } from '../../rules/profiles.ts';
import type { RuleId } from '../../rules/types.ts';

/** What determines the margin at a point. */
export interface Limit {
  readonly rule: RuleId;
  readonly subject: string;
  /** Whether it is to stay out of, as a stream of air: `keepOut` of the subject. The name is the key that the command line prints. */
  readonly stream: boolean;
}

type RingBody = Extract<Body, { kind: 'ring' }>;

/**
 * The margins of a level decomposed into simple pieces; the margin is their minimum. Flat arrays, `STRIDE` numbers
 * per piece, lengths in mm.
 *
 * - `SEGMENT`: from (0, 1), run (2, 3), one over its squared length (4; 0 for a point), offset (5), floor (6). Its margin
 *   is the distance from the axis minus the offset, but never below the floor.
 * - `HANGING`: the same with a height (7): the distance in space to an item above, minus the required one.
 * - `INSIDE`: the floor (6) within a body. Outside of it, its edges are pieces of their own.
 * - `SECTOR`: apex (0, 1), direction (2, 3), cosine and sine of half the spread (4, 5), reach (6), radius of the probe (7):
 *   the distance of the rim to an air stream, negative within it.
 */
export interface Primitives {
  readonly count: number;
  readonly kind: Uint8Array;
  readonly data: Float64Array;
  /** Index of the limit that each piece belongs to. */
  readonly owner: Int32Array;
  /** The body of an `INSIDE` piece, by limit. */
  readonly bodies: readonly Body[];
  /** In profile order, and in file order within a rule. */
  readonly limits: readonly Limit[];
}

export const STRIDE = 8;
export const SEGMENT = 0;
export const HANGING = 1;
export const INSIDE = 2;
export const SECTOR = 3;

/**
 * A subject that counts at the probe's height. A stream has no floor: its margin decreases further with the depth
 * within.
 */
interface Entry {
  readonly body: Body;
  readonly limit: Limit;
  readonly required: Mm;
  readonly height: Mm;
  readonly floor: Mm;
}

/**
 * Decomposes every distance rule of the plan against every subject on the level.
 *
 * @param carriers ids of objects that support the probe and do not obstruct it
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

/** A ring with a smaller area (for example a box without depth) is only its edges, mm². */
const LEAST_AREA = 1e-6;

function hasInside({ flat }: RingBody): boolean {
  return flatArea(flat) > LEAST_AREA;
}

function piecesOf(body: Body): number {
  if (body.kind !== 'ring') return 1;
  return body.flat.length / 2 + (hasInside(body) ? 1 : 0);
}

function levelEntries(plan: Plan, model: LevelModel, probe: Probe, carriers: readonly string[]): Entry[] {
  const entries: Entry[] = [];
  for (const rule of effectiveRules(plan.protocol)) {
    let last: Body | null = null;
    for (const subject of ruleSubjects(plan, model, rule, probe)) {
      const { body, id, keepOut } = subject;
      // A joint is listed once per wall.
      if (isWall(subject) && body === last) continue;
      last = body;
      if (subject.what === 'object' && carriers.includes(id)) continue;
      const limit = { rule: rule.id, subject: id, stream: keepOut };
      if (keepOut) {
        // Deep within a ring the margin is not needed, only that it is not met.
        const floor = subject.what === 'sun' ? -probe.radius : Number.NEGATIVE_INFINITY;
        entries.push({ body, limit, required: 0, height: 0, floor });
        continue;
      }
      const required = rule.least ?? 0;
      // Where the limit tolerates a touch, only the depth within the body remains, which no check tolerates.
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

  /** Adds a segment, or a point, thickened by `own` on all sides. */
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
