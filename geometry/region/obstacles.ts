import { freeBoundary } from '../arrangement/free-boundary.ts';
import { type Hole, holeIn } from '../arrangement/hole.ts';
import { linkRings } from '../arrangement/link-rings.ts';
import { OutlineStore } from '../arrangement/outline-store.ts';
import { reversedRing, toEdges } from '../arrangement/rings.ts';
import { EVERYWHERE } from '../arrangement/space.ts';
import type { ArcRing } from '../arrangement/types.ts';
import { type GrownZone, growZone, outlineOf } from '../arrangement/zone.ts';
import { ruleSubjects } from '../check/rule-subjects.ts';
import { axisDistance, everyWall, isWall, type Subject, supportedDepth } from '../check/subjects.ts';
import type { LevelModel } from '../level/types.ts';
import type { Mm, Plan } from '../plan/model.ts';
import type { Body } from '../plane/body.ts';
import { memoize } from '../plane/memoize.ts';
import { LIMIT_TOLERANCE } from '../plane/tolerances.ts';
import type { Ring } from '../plane/types.ts';
import { type EffectiveRule, effectiveRules } from '../rules/profiles.ts';
import type { RuleId } from '../rules/types.ts';
import type { Probe, Zone } from './types.ts';

/** Something that the axis of a probe must stay out of. */
export interface Obstacle {
  readonly grown: GrownZone;
  /** What to draw; null for a bare wall, which is there for the rim only. */
  readonly zone: Zone | null;
}

/** Everything on a level that restricts the axis of a probe. */
export interface Obstacles {
  /** In profile order; bare walls last. */
  readonly all: readonly Obstacle[];
  /** What to draw of them, in the same order. */
  readonly zones: readonly Zone[];
}

/**
 * Returns what the axis of a probe must stay out of: a zone for each subject of each distance rule, and the walls
 * themselves where none of their zones is as wide as the rim. What an edit does not change keeps its Obstacle object,
 * so that two lists can be compared by identity.
 *
 * @param spare extra distance added to every limit, mm
 */
export function obstaclesOf(plan: Plan, model: LevelModel, probe: Probe, spare: Mm): Obstacles {
  const rim = Math.max(0, probe.radius - LIMIT_TOLERANCE);
  const lists = effectiveRules(plan.protocol).map((rule) =>
    obstaclesOfRule(ruleSubjects(plan, model, rule, probe), rule, probe, spare),
  );
  const wide = new Set<Body>();
  for (const { walls } of lists) for (const { subject, grown } of walls) if (grown.grow >= rim) wide.add(subject.body);
  const bare: Obstacle[] = [];
  const store = new OutlineStore();
  for (const wall of everyWall(model)) {
    if (wide.has(wall.body)) continue;
    wide.add(wall.body);
    bare.push(cachedObstacle(wall, null, rim, null, store));
  }
  return {
    all: ([] as Obstacle[]).concat(...lists.map(({ obstacles }) => obstacles), bare),
    zones: ([] as Zone[]).concat(...lists.map(({ zones }) => zones)),
  };
}

interface CachedObstacle extends Obstacle {
  readonly subject: Subject;
  readonly rule: EffectiveRule | null;
  readonly wall: boolean;
}

/** The obstacles of one rule, in the order of its subjects. */
interface RuleObstacles {
  readonly subjects: readonly Subject[];
  readonly probe: Probe;
  readonly spare: Mm;
  readonly obstacles: readonly CachedObstacle[];
  readonly zones: readonly Zone[];
  /** The obstacles that are walls. */
  readonly walls: readonly CachedObstacle[];
}

/** Number of results cached per subject and per rule: a few heights, profiles or sizes in parallel use. */
const MOST_CACHED = 4;

const listsOfRule = memoize((_: EffectiveRule): RuleObstacles[] => []);

/** Cached by the identity of the list of subjects: editing furniture does not process the fixtures. */
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
  else if (lists.push(made) > MOST_CACHED) lists.shift();
  return made;
}

/**
 * @param before the previous result of the same rule and probe, for a list that may differ slightly: obstacles of
 * unchanged subjects are reused in one pass, because a lookup per subject would dominate the time
 */
function listObstacles(
  subjects: readonly Subject[],
  rule: EffectiveRule,
  probe: Probe,
  spare: Mm,
  before: readonly CachedObstacle[],
): CachedObstacle[] {
  const wanted = spare > 0 ? withSpare(rule, spare) : rule;
  const obstacles: CachedObstacle[] = [];
  const store = new OutlineStore();
  let place = 0;
  let last: Body | null = null;
  for (const subject of subjects) {
    // A joint is listed once per wall; one zone is enough.
    if (isWall(subject) && subject.body === last) continue;
    last = subject.body;
    // At its index, or shifted by one where another was added or removed.
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
    // Extra distance is applied in full; only the limit itself has a tolerance.
    const grow = subject.keepOut && spare > 0 ? probe.radius + spare : keep;
    const depth = supportedDepth(rule, subject, probe);
    obstacles.push(cachedObstacle(subject, rule, grow, depth === null ? null : holeIn(subject.body, depth), store));
    place++;
  }
  return obstacles;
}

function sameProbe(a: Probe, b: Probe): boolean {
  return a.base === b.base && a.radius === b.radius && a.tall === b.tall;
}

function withSpare(rule: EffectiveRule, spare: Mm): EffectiveRule {
  return rule.least === null ? rule : { ...rule, least: rule.least + LIMIT_TOLERANCE + spare };
}

const obstaclesOfSubject = new WeakMap<Subject, CachedObstacle[]>();

function cachedObstacle(
  subject: Subject,
  rule: EffectiveRule | null,
  grow: Mm,
  hole: Hole | null,
  store: OutlineStore,
): CachedObstacle {
  const cached = obstaclesOfSubject.get(subject);
  if (cached)
    for (const one of cached) if (one.rule === rule && one.grown.grow === grow && one.grown.hole === hole) return one;
  const grown = growZone(subject.body, grow, hole, store);
  const zone = rule && new LazyZone(rule, subject, grown);
  const made = { subject, rule, wall: isWall(subject), grown, zone };
  if (!cached) obstaclesOfSubject.set(subject, [made]);
  else {
    if (cached.length >= MOST_CACHED) cached.shift();
    cached.push(made);
  }
  return made;
}

/** A zone whose outlines are computed on first use. */
class LazyZone implements Zone {
  readonly rule: RuleId;
  readonly subject: string | null;
  readonly distance: Mm;
  readonly keepOut: boolean;
  readonly sunlit?: Ring;
  readonly #grown: GrownZone;
  #outlines: readonly ArcRing[] | null = null;

  constructor(rule: EffectiveRule, { id, keepOut, body, what }: Subject, grown: GrownZone) {
    this.rule = rule.id;
    this.subject = id;
    this.keepOut = keepOut;
    this.distance = keepOut ? 0 : (rule.least ?? 0);
    if (what === 'sun' && body.kind === 'ring') this.sunlit = body.ring;
    this.#grown = grown;
  }

  get pieces(): Float64Array | undefined {
    return this.#grown.convex ? outlineOf(this.#grown) : undefined;
  }

  get outlines(): readonly ArcRing[] {
    this.#outlines ??= outlinesOf(this.#grown);
    return this.#outlines;
  }
}

function outlinesOf(grown: GrownZone): ArcRing[] {
  if (!grown.convex) return linkRings(freeBoundary([grown], EVERYWHERE)).map(reversedRing);
  return [toEdges(outlineOf(grown))];
}
