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

/** A zone that the axis of a probe must stay out of. */
export interface Obstacle {
  readonly grown: GrownZone;
  /** The zone to draw; null for a bare wall, which is an obstacle only for the rim. */
  readonly zone: Zone | null;
}

/** Everything on a level that restricts the axis of a probe. */
export interface Obstacles {
  /** In profile order; bare walls last. */
  readonly all: readonly Obstacle[];
  /** The zones to draw, in the same order. */
  readonly zones: readonly Zone[];
}

/**
 * Returns the zones that the axis of a probe must stay out of: one for each subject of each distance rule, and the walls
 * themselves where none of their zones is as wide as the rim. An obstacle that an edit does not change keeps its object,
 * so that two lists can be compared by identity.
 *
 * @param spare extra distance added to every limit, mm
 */
export function obstaclesOf(plan: Plan, model: LevelModel, probe: Probe, spare: Mm): Obstacles {
  const rim = Math.max(0, probe.radius - LIMIT_TOLERANCE);
  const walls = everyWall(model);
  const lists = effectiveRules(plan.protocol).map((rule) =>
    obstaclesOfRule(ruleSubjects(plan, model, rule, probe), walls, rule, probe, spare),
  );
  return {
    all: ([] as Obstacle[]).concat(...lists.map(({ obstacles }) => obstacles), bareWalls(walls, lists, rim)),
    zones: ([] as Zone[]).concat(...lists.map(({ zones }) => zones)),
  };
}

/** The obstacle that a subject is under a rule. */
interface SubjectObstacle extends Obstacle {
  readonly of: Subject;
  readonly under: EffectiveRule;
  readonly zone: Zone;
}

/** The obstacles of one rule, in the order of its subjects. */
interface RuleObstacles {
  readonly subjects: readonly Subject[];
  /** Every wall of the level. */
  readonly levelWalls: readonly Subject[];
  readonly probe: Probe;
  readonly spare: Mm;
  /** The obstacle of each subject; null for a subject that is none. */
  readonly bySubject: readonly (SubjectObstacle | null)[];
  readonly obstacles: readonly SubjectObstacle[];
  readonly zones: readonly Zone[];
  /** The obstacles of walls. */
  readonly walls: readonly SubjectObstacle[];
}

/** Number of results cached per subject and per rule: a few heights, profiles or sizes in parallel use. */
const MOST_CACHED = 4;

const listsOfRule = memoize((_: EffectiveRule): RuleObstacles[] => []);

/** Returns the obstacles of a rule, cached by the identity of the list of subjects: editing furniture does not process the fixtures. */
function obstaclesOfRule(
  subjects: readonly Subject[],
  levelWalls: readonly Subject[],
  rule: EffectiveRule,
  probe: Probe,
  spare: Mm,
): RuleObstacles {
  const lists = listsOfRule(rule);
  const k = lists.findIndex((one) => one.spare === spare && sameProbe(one.probe, probe));
  const before = lists[k];
  if (before?.subjects === subjects) return before;
  const bySubject = listObstacles(subjects, rule, probe, spare, before);
  const obstacles = bySubject.filter((one) => one !== null);
  const zones = obstacles.map(({ zone }) => zone);
  // The obstacles of walls depend on the walls alone.
  const walls = before?.levelWalls === levelWalls ? before.walls : obstacles.filter(({ of }) => isWall(of));
  const made = { subjects, levelWalls, probe, spare, bySubject, obstacles, zones, walls };
  if (before) lists[k] = made;
  else if (lists.push(made) > MOST_CACHED) lists.shift();
  return made;
}

/**
 * @param before the previous result of the same rule and probe, for a list that may differ slightly: obstacles of unchanged
 * subjects are reused in one pass that only compares the lists, because examining each subject or looking it up would
 * dominate the time
 */
function listObstacles(
  subjects: readonly Subject[],
  rule: EffectiveRule,
  probe: Probe,
  spare: Mm,
  before: RuleObstacles | undefined,
): (SubjectObstacle | null)[] {
  const wanted = spare > 0 ? withSpare(rule, spare) : rule;
  const obstacles: (SubjectObstacle | null)[] = [];
  const store = new OutlineStore();
  const old = before?.subjects ?? [];
  let place = 0;
  for (let i = 0; i < subjects.length; i++, place++) {
    const subject = subjects[i] as Subject;
    // The subject is at the same index, or shifted by one where another was added or removed.
    if (old[place] !== subject) {
      if (old[place + 1] === subject) place++;
      else if (place > 0 && old[place - 1] === subject) place--;
    }
    const isSame = before && old[place] === subject && (i === 0 ? place === 0 : old[place - 1] === subjects[i - 1]);
    if (isSame) obstacles.push(before.bySubject[place] as SubjectObstacle | null);
    // A joint is listed once per wall; one zone is enough.
    else if (isWall(subject) && subject.body === subjects[i - 1]?.body) obstacles.push(null);
    else obstacles.push(obstacleOf(subject, rule, wanted, probe, spare, store));
  }
  return obstacles;
}

/** @param wanted the rule with the extra distance */
function obstacleOf(
  subject: Subject,
  rule: EffectiveRule,
  wanted: EffectiveRule,
  probe: Probe,
  spare: Mm,
  store: OutlineStore,
): SubjectObstacle | null {
  const keep = axisDistance(wanted, subject, probe);
  if (keep === null) return null;
  // Extra distance is applied in full; only the limit itself has a tolerance.
  const grow = subject.keepOut && spare > 0 ? probe.radius + spare : keep;
  const depth = supportedDepth(rule, subject, probe);
  return cachedObstacle(subject, rule, grow, depth === null ? null : holeIn(subject.body, depth), store);
}

function sameProbe(a: Probe, b: Probe): boolean {
  return a.base === b.base && a.radius === b.radius && a.tall === b.tall;
}

function withSpare(rule: EffectiveRule, spare: Mm): EffectiveRule {
  return rule.least === null ? rule : { ...rule, least: rule.least + LIMIT_TOLERANCE + spare };
}

const obstaclesOfSubject = new WeakMap<Subject, SubjectObstacle[]>();

function cachedObstacle(
  subject: Subject,
  rule: EffectiveRule,
  grow: Mm,
  hole: Hole | null,
  store: OutlineStore,
): SubjectObstacle {
  const cached = obstaclesOfSubject.get(subject);
  if (cached) {
    for (const one of cached) {
      if (one.under === rule && one.grown.grow === grow && one.grown.hole === hole) return one;
    }
  }
  const grown = growZone(subject.body, grow, hole, store);
  const made = { of: subject, under: rule, grown, zone: new LazyZone(rule, subject, grown) };
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

/** The walls that have no zone as wide as the rim, for one set of zones of walls. */
interface BareWalls {
  readonly rim: Mm;
  readonly zones: readonly (readonly SubjectObstacle[])[];
  readonly bare: readonly Obstacle[];
}

const bareWallsOf = memoize((_: readonly Subject[]): BareWalls[] => []);

/** Returns the bare walls, cached while the walls and their zones stay the same: no edit of furniture changes them. */
function bareWalls(walls: readonly Subject[], lists: readonly RuleObstacles[], rim: Mm): readonly Obstacle[] {
  const cached = bareWallsOf(walls);
  const found = cached.find(
    (one) =>
      one.rim === rim && one.zones.length === lists.length && one.zones.every((zones, k) => zones === lists[k]?.walls),
  );
  if (found) return found.bare;
  const zones = lists.map((list) => list.walls);
  const wide = new Set<Body>();
  for (const list of zones) for (const { of, grown } of list) if (grown.grow >= rim) wide.add(of.body);
  const bare: Obstacle[] = [];
  const store = new OutlineStore();
  for (const { body } of walls) {
    if (wide.has(body)) continue;
    wide.add(body);
    bare.push(bareWall(body, rim, store));
  }
  if (cached.push({ rim, zones, bare }) > MOST_CACHED) cached.shift();
  return bare;
}

const bareWallsOfBody = memoize((_: Body): Obstacle[] => []);

function bareWall(body: Body, rim: Mm, store: OutlineStore): Obstacle {
  const cached = bareWallsOfBody(body);
  const found = cached.find(({ grown }) => grown.grow === rim);
  if (found) return found;
  const made = { grown: growZone(body, rim, null, store), zone: null };
  if (cached.push(made) > MOST_CACHED) cached.shift();
  return made;
}
