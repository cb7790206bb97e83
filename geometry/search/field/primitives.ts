import { ruleSubjects } from '../../check/rule-subjects.ts';
import { heightBetween, isWall, type Subject, sharesHeight } from '../../check/subjects.ts';
import type { LevelModel } from '../../level/types.ts';
import type { Mm, Plan } from '../../plan/model.ts';
import { type Body, flatArea } from '../../plane/body.ts';
import { LIMIT_TOLERANCE } from '../../plane/tolerances.ts';
import type { Probe } from '../../region/types.ts';
import { type EffectiveRule, effectiveRules } from '../../rules/profiles.ts';
import type { RuleId } from '../../rules/types.ts';

/** What determines the margin at a point. */
export interface Limit {
  readonly rule: RuleId;
  readonly subject: string;
  /** Whether the detector must only stay out of the subject, as of an air stream: its `keepOut`. The command line prints this name as a key. */
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
  /** Index of the limit that each piece belongs to: a rule and a subject, in profile order, and in file order within a rule. */
  readonly owner: Int32Array;
  readonly rules: readonly RuleId[];
  readonly subjects: readonly Subject[];
  /** The bodies of the subjects. */
  readonly bodies: readonly Body[];
}

export const STRIDE = 8;
export const SEGMENT = 0;
export const HANGING = 1;
export const INSIDE = 2;
export const SECTOR = 3;

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
  const rules = effectiveRules(plan.protocol);
  const lists = rules.map((rule) => ruleSubjects(plan, model, rule, probe));
  let most = 0;
  for (const list of lists) for (const { body } of list) most += mostPieces(body);
  const writer = new Writer(most, probe.radius);
  rules.forEach((rule, k) => {
    addRule(writer, rule, lists[k] as readonly Subject[], probe, carriers);
  });
  const { count, kind, data, owner, rules: limitedBy, subjects, bodies } = writer;
  return { count, kind, data, owner, rules: limitedBy, subjects, bodies };
}

/** A ring with a smaller area (for example a box without depth) is only its edges, mm². */
const LEAST_AREA = 1e-6;

function hasInside({ flat }: RingBody): boolean {
  return flatArea(flat) > LEAST_AREA;
}

function mostPieces(body: Body): number {
  return body.kind === 'ring' ? body.flat.length / 2 + 1 : 1;
}

/** Adds the subjects of a rule that count at the probe's height. */
function addRule(
  writer: Writer,
  rule: EffectiveRule,
  subjects: readonly Subject[],
  probe: Probe,
  carriers: readonly string[],
): void {
  const required = rule.least ?? 0;
  let last: Body | null = null;
  for (const subject of subjects) {
    const { body } = subject;
    // A joint is listed once per wall.
    if (isWall(subject) && body === last) continue;
    last = body;
    if (subject.what === 'object' && carriers.includes(subject.id)) continue;
    if (subject.keepOut) {
      // A stream has no floor: its margin decreases further with the depth inside. For a ring of sun, the margin deep inside is not needed,
      // only that the rule is broken there.
      const floor = subject.what === 'sun' ? -probe.radius : Number.NEGATIVE_INFINITY;
      writer.add(rule.id, subject, 0, 0, floor);
    } else if (required <= LIMIT_TOLERANCE && sharesHeight(subject, probe)) {
      // The limit tolerates touching, so only the depth inside the body remains, which no check tolerates.
      writer.add(rule.id, subject, 0, 0, -probe.radius);
    } else if (rule.least !== null) {
      const height = heightOf(subject, rule.measured === 'space', probe);
      if (height !== null) writer.add(rule.id, subject, required, height, height - required);
    }
  }
}

function heightOf(subject: Subject, inSpace: boolean, probe: Probe): Mm | null {
  return inSpace ? heightBetween(subject, probe) : 0;
}

/** Writes the pieces of one subject after the other. The limit of a subject is kept in fields while its pieces are written. */
class Writer {
  count = 0;
  readonly kind: Uint8Array;
  readonly data: Float64Array;
  readonly owner: Int32Array;
  readonly rules: RuleId[] = [];
  readonly subjects: Subject[] = [];
  readonly bodies: Body[] = [];
  private readonly radius: Mm;
  private required: Mm = 0;
  private height: Mm = 0;
  private floor: Mm = 0;

  /** @param most the greatest number of pieces */
  constructor(most: number, radius: Mm) {
    this.kind = new Uint8Array(most);
    this.data = new Float64Array(most * STRIDE);
    this.owner = new Int32Array(most);
    this.radius = radius;
  }

  /** Adds a subject that a rule requires a distance to, `height` above the probe. */
  add(rule: RuleId, subject: Subject, required: Mm, height: Mm, floor: Mm): void {
    const { body } = subject;
    this.rules.push(rule);
    this.subjects.push(subject);
    this.bodies.push(body);
    this.required = required;
    this.height = height;
    this.floor = floor;
    if (body.kind === 'disc') this.addRound(body.x, body.y, 0, 0, body.radius);
    else if (body.kind === 'ring') this.addRing(body);
    else this.addSector(body);
  }

  private addRing(body: RingBody): void {
    const { flat } = body;
    let ax = flat[flat.length - 2] as number;
    let ay = flat[flat.length - 1] as number;
    for (let i = 0; i < flat.length; i += 2) {
      const bx = flat[i] as number;
      const by = flat[i + 1] as number;
      this.addRound(ax, ay, bx - ax, by - ay, 0);
      ax = bx;
      ay = by;
    }
    if (hasInside(body)) this.write(INSIDE, 0, 0, 0, 0, 0, 0, this.floor, 0);
  }

  private addSector(body: Extract<Body, { kind: 'sector' }>): void {
    const { x, y, direction, half, reach } = body;
    const ux = Math.cos(direction);
    const uy = Math.sin(direction);
    // A sector without spread is a line.
    if (half === 0) this.addRound(x, y, ux * reach, uy * reach, 0);
    else this.write(SECTOR, x, y, ux, uy, Math.cos(half), Math.sin(half), reach, this.radius);
  }

  /** Adds a segment, or a point, thickened by `own` on all sides. */
  private addRound(x: Mm, y: Mm, dx: Mm, dy: Mm, own: Mm): void {
    const { required, height, floor } = this;
    const lengthSq = dx * dx + dy * dy;
    const inverse = lengthSq > 0 ? 1 / lengthSq : 0;
    const touching = own + this.radius;
    if (height > 0) this.write(HANGING, x, y, dx, dy, inverse, touching, floor, height);
    else this.write(SEGMENT, x, y, dx, dy, inverse, touching + required, floor, 0);
  }

  private write(
    kind: number,
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
    const k = this.count * STRIDE;
    this.kind[this.count] = kind;
    this.owner[this.count] = this.subjects.length - 1;
    this.count++;
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
