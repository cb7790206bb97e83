import type { Body } from '../body.ts';
import { axisDistance, MEETS, type Subject, subjectsOf, wallBodies } from '../check/subjects.ts';
import type { LevelModel } from '../level/types.ts';
import type { Mm, Plan } from '../plan/model.ts';
import { remembered } from '../remembered.ts';
import { type EffectiveRule, effectiveRules } from '../rules/profiles.ts';
import type { RuleId } from '../rules/types.ts';
import { EVERYWHERE, freeBoundary, type Grown, grown } from './free-boundary.ts';
import { linkRings, toEdges, turnedRing } from './rings.ts';
import type { ArcRing, Probe, Zone } from './types.ts';

/** Something that the axis of a probe stays out of. */
export interface Obstacle {
  readonly grown: Grown;
  /** What to draw; null for the bare wall that the rim must not reach into. */
  readonly zone: Zone | null;
}

/**
 * Everything on a level that takes floor away from the axis of a probe: a zone for each subject of each distance rule, and
 * the walls themselves where no zone of theirs is as wide as the rim. In the order of the profile. What an edit leaves alone
 * keeps its Obstacle object, so that two lists can be compared by identity.
 *
 * @param spare how much more than its limit every rule keeps, mm
 */
export function obstaclesOf(plan: Plan, model: LevelModel, probe: Probe, spare: Mm): Obstacle[] {
  const obstacles: Obstacle[] = [];
  const rim = Math.max(0, probe.radius - MEETS);
  const wide = new Set<Body>();
  for (const rule of effectiveRules(plan.protocol)) {
    for (const { subject, obstacle } of obstaclesOfRule(subjectsOf(rule, model), rule, probe, spare)) {
      obstacles.push(obstacle);
      if (subject.top === Number.POSITIVE_INFINITY && obstacle.grown.grow >= rim) wide.add(subject.body);
    }
  }
  for (const wall of wallBodies(model)) if (!wide.has(wall.body)) obstacles.push(keptObstacle(wall, null, rim));
  return obstacles;
}

/** The obstacles of one list of subjects, in its order. */
interface RuleObstacles {
  readonly rule: EffectiveRule;
  readonly probe: Probe;
  readonly spare: Mm;
  readonly obstacles: readonly { readonly subject: Subject; readonly obstacle: Obstacle }[];
}

const knownOfList = remembered((_: readonly Subject[]): RuleObstacles[] => []);

/** The same list of subjects has the same obstacles: an edit of the furniture does not go through the fixtures. */
function obstaclesOfRule(
  subjects: readonly Subject[],
  rule: EffectiveRule,
  probe: Probe,
  spare: Mm,
): RuleObstacles['obstacles'] {
  const known = knownOfList(subjects);
  const same = known.find((one) => one.rule === rule && one.spare === spare && sameProbe(one.probe, probe));
  if (same) return same.obstacles;
  const wanted = spare > 0 ? withSpare(rule, spare) : rule;
  const obstacles: { subject: Subject; obstacle: Obstacle }[] = [];
  for (const subject of subjects) {
    const keep = axisDistance(wanted, subject, probe);
    if (keep === null) continue;
    // What is to be spared is spared in full: only a limit itself may be missed by a hair.
    const grow = subject.stream && spare > 0 ? probe.radius + spare : keep;
    obstacles.push({ subject, obstacle: keptObstacle(subject, rule, grow) });
  }
  if (known.length >= KEPT) known.shift();
  known.push({ rule, probe, spare, obstacles });
  return obstacles;
}

function sameProbe(a: Probe, b: Probe): boolean {
  return a.base === b.base && a.radius === b.radius && a.tall === b.tall;
}

function withSpare(rule: EffectiveRule, spare: Mm): EffectiveRule {
  return rule.least === null ? rule : { ...rule, least: rule.least + MEETS + spare };
}

interface KeptObstacle extends Obstacle {
  readonly rule: EffectiveRule | null;
}

/** How many obstacles are kept of one subject, and of one list: a few heights, profiles or sizes side by side. */
const KEPT = 4;

const obstaclesOfSubject = new WeakMap<Subject, KeptObstacle[]>();

function keptObstacle(subject: Subject, rule: EffectiveRule | null, grow: Mm): Obstacle {
  const kept = obstaclesOfSubject.get(subject);
  if (kept) for (const one of kept) if (one.rule === rule && one.grown.grow === grow) return one;
  const made = { rule, grown: grown(subject.body, grow), zone: rule && new GrownZone(rule, subject, grow) };
  if (!kept) obstaclesOfSubject.set(subject, [made]);
  else {
    if (kept.length >= KEPT) kept.shift();
    kept.push(made);
  }
  return made;
}

/** A zone whose outlines are worked out when somebody draws it. */
class GrownZone implements Zone {
  readonly rule: RuleId;
  readonly subject: string | null;
  readonly distance: Mm;
  readonly stream: boolean;
  readonly #body: Body;
  readonly #grow: Mm;
  #outlines: readonly ArcRing[] | null = null;

  constructor(rule: EffectiveRule, { id, stream, body }: Subject, grow: Mm) {
    this.rule = rule.id;
    this.subject = id;
    this.distance = stream ? 0 : (rule.least ?? 0);
    this.stream = stream;
    this.#body = body;
    this.#grow = grow;
  }

  get outlines(): readonly ArcRing[] {
    this.#outlines ??= outlinesOf(this.#body, this.#grow);
    return this.#outlines;
  }
}

function outlinesOf(body: Body, grow: Mm): ArcRing[] {
  const alone = grown(body, grow);
  if (!alone.convex) return linkRings(freeBoundary([alone], EVERYWHERE)).map(turnedRing);
  return [toEdges(alone.outline)];
}
