import { freeBoundary } from '../arrangement/free-boundary.ts';
import { type Hole, holeIn } from '../arrangement/hole.ts';
import { linkRings } from '../arrangement/link-rings.ts';
import { reversedRing, toEdges } from '../arrangement/rings.ts';
import { EVERYWHERE } from '../arrangement/space.ts';
import type { ArcRing } from '../arrangement/types.ts';
import type { GrownZone } from '../arrangement/zone.ts';
import { growZone } from '../arrangement/zone.ts';
import { axisDistance, carriedDepth, isWall, MEETS, type Subject, subjectsOf, wallBodies } from '../check/subjects.ts';
import type { LevelModel } from '../level/types.ts';
import type { Mm, Plan } from '../plan/model.ts';
import type { Body } from '../plane/body.ts';
import { memoize } from '../plane/memoize.ts';
import { type EffectiveRule, effectiveRules } from '../rules/profiles.ts';
import type { RuleId } from '../rules/types.ts';
import type { Probe, Zone } from './types.ts';

/** Something that the axis of a probe stays out of. */
export interface Obstacle {
  readonly grown: GrownZone;
  /** What to draw; null for the bare wall that the rim must not reach into. */
  readonly zone: Zone | null;
}

/** Everything on a level that takes floor away from the axis of a probe. */
export interface Obstacles {
  /** In the order of the profile; bare walls last. */
  readonly all: readonly Obstacle[];
  /** What to draw of them, in the same order. */
  readonly zones: readonly Zone[];
}

/**
 * What the axis of a probe stays out of: a zone for each subject of each distance rule, and the walls themselves where no
 * zone of theirs is as wide as the rim. What an edit leaves alone keeps its Obstacle object, so that two lists can be
 * compared by identity.
 *
 * @param spare how much more than its limit every rule keeps, mm
 */
export function obstaclesOf(plan: Plan, model: LevelModel, probe: Probe, spare: Mm): Obstacles {
  const rim = Math.max(0, probe.radius - MEETS);
  const lists = effectiveRules(plan.protocol).map((rule) =>
    obstaclesOfRule(subjectsOf(rule, model), rule, probe, spare),
  );
  const wide = new Set<Body>();
  for (const { walls } of lists) for (const { subject, grown } of walls) if (grown.grow >= rim) wide.add(subject.body);
  const bare: Obstacle[] = [];
  for (const wall of wallBodies(model)) {
    if (wide.has(wall.body)) continue;
    wide.add(wall.body);
    bare.push(keptObstacle(wall, null, rim, null));
  }
  return {
    all: ([] as Obstacle[]).concat(...lists.map(({ obstacles }) => obstacles), bare),
    zones: ([] as Zone[]).concat(...lists.map(({ zones }) => zones)),
  };
}

interface KeptObstacle extends Obstacle {
  readonly subject: Subject;
  readonly rule: EffectiveRule | null;
  readonly wall: boolean;
}

/** The obstacles that one rule makes of a list of subjects, in its order. */
interface RuleObstacles {
  readonly subjects: readonly Subject[];
  readonly probe: Probe;
  readonly spare: Mm;
  readonly obstacles: readonly KeptObstacle[];
  readonly zones: readonly Zone[];
  /** Those of them that are walls. */
  readonly walls: readonly KeptObstacle[];
}

/** How much is kept of one subject, and of one rule: a few heights, profiles or sizes side by side. */
const KEPT = 4;

const listsOfRule = memoize((_: EffectiveRule): RuleObstacles[] => []);

/** The same list of subjects has the same obstacles: an edit of the furniture does not go through the fixtures. */
function obstaclesOfRule(subjects: readonly Subject[], rule: EffectiveRule, probe: Probe, spare: Mm): RuleObstacles {
  const lists = listsOfRule(rule);
  const k = lists.findIndex((one) => one.spare === spare && sameProbe(one.probe, probe));
  const before = lists[k];
  if (before?.subjects === subjects) return before;
  const obstacles = listObstacles(subjects, rule, probe, spare, before?.obstacles ?? []);
  const walls = obstacles.filter(({ wall }) => wall);
  const zones: Zone[] = [];
  for (const { zone } of obstacles) if (zone) zones.push(zone);
  const made = { subjects, probe, spare, obstacles, zones, walls };
  if (before) lists[k] = made;
  else if (lists.push(made) > KEPT) lists.shift();
  return made;
}

/**
 * @param before what the same rule made for the same probe of a list that may differ in little: what stayed is taken over
 * from there without being looked at, since going to every subject is what takes the time
 */
function listObstacles(
  subjects: readonly Subject[],
  rule: EffectiveRule,
  probe: Probe,
  spare: Mm,
  before: readonly KeptObstacle[],
): KeptObstacle[] {
  const wanted = spare > 0 ? withSpare(rule, spare) : rule;
  const obstacles: KeptObstacle[] = [];
  let place = 0;
  let last: Body | null = null;
  for (const subject of subjects) {
    // A joint stands in the list once for each of its walls; one zone is enough.
    if (isWall(subject) && subject.body === last) continue;
    last = subject.body;
    // At its place, or one on or back where another came or went.
    if (before[place]?.subject !== subject) {
      if (before[place + 1]?.subject === subject) place++;
      else if (place > 0 && before[place - 1]?.subject === subject) place--;
    }
    const old = before[place];
    if (old?.subject === subject) {
      obstacles.push(old);
      place++;
      continue;
    }
    const keep = axisDistance(wanted, subject, probe);
    if (keep === null) continue;
    // What is to be spared is spared in full: only a limit itself may be missed by a hair.
    const grow = subject.stream && spare > 0 ? probe.radius + spare : keep;
    const depth = carriedDepth(rule, subject, probe);
    obstacles.push(keptObstacle(subject, rule, grow, depth === null ? null : holeIn(subject.body, depth)));
    place++;
  }
  return obstacles;
}

function sameProbe(a: Probe, b: Probe): boolean {
  return a.base === b.base && a.radius === b.radius && a.tall === b.tall;
}

function withSpare(rule: EffectiveRule, spare: Mm): EffectiveRule {
  return rule.least === null ? rule : { ...rule, least: rule.least + MEETS + spare };
}

const obstaclesOfSubject = new WeakMap<Subject, KeptObstacle[]>();

function keptObstacle(subject: Subject, rule: EffectiveRule | null, grow: Mm, hole: Hole | null): KeptObstacle {
  const kept = obstaclesOfSubject.get(subject);
  if (kept)
    for (const one of kept) if (one.rule === rule && one.grown.grow === grow && one.grown.hole === hole) return one;
  const made = {
    subject,
    rule,
    wall: isWall(subject),
    grown: growZone(subject.body, grow, hole),
    zone: rule && new LazyZone(rule, subject, grow, hole),
  };
  if (!kept) obstaclesOfSubject.set(subject, [made]);
  else {
    if (kept.length >= KEPT) kept.shift();
    kept.push(made);
  }
  return made;
}

/** A zone whose outlines are worked out when somebody draws it. */
class LazyZone implements Zone {
  readonly rule: RuleId;
  readonly subject: string | null;
  readonly distance: Mm;
  readonly stream: boolean;
  readonly #body: Body;
  readonly #grow: Mm;
  readonly #hole: Hole | null;
  #outlines: readonly ArcRing[] | null = null;

  constructor(rule: EffectiveRule, { id, stream, body }: Subject, grow: Mm, hole: Hole | null) {
    this.rule = rule.id;
    this.subject = id;
    this.distance = stream ? 0 : (rule.least ?? 0);
    this.stream = stream;
    this.#body = body;
    this.#grow = grow;
    this.#hole = hole;
  }

  get outlines(): readonly ArcRing[] {
    this.#outlines ??= outlinesOf(this.#body, this.#grow, this.#hole);
    return this.#outlines;
  }
}

function outlinesOf(body: Body, grow: Mm, hole: Hole | null): ArcRing[] {
  const alone = growZone(body, grow, hole);
  if (!alone.convex) return linkRings(freeBoundary([alone], EVERYWHERE)).map(reversedRing);
  return [toEdges(alone.outline)];
}
