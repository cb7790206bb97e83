import type { LevelModel } from '../level/types.ts';
import type { Detector, Mm, Plan } from '../plan/model.ts';
import { bodyDistance, shapeBody } from '../plane/body.ts';
import { LIMIT_TOLERANCE } from '../plane/tolerances.ts';
import { citationFor } from '../rules/citation.ts';
import type { EffectiveRule } from '../rules/profiles.ts';
import { wasKept, wasOff } from '../rules/running.ts';
import { checkAbsent } from './looked-for.ts';
import {
  compareByMargin,
  distanceCheck,
  measureSubject,
  nearestAndNotClear,
  reasonCheck,
  witnessTo,
} from './measure.ts';
import { ruleSubjects } from './rule-subjects.ts';
import {
  collides,
  detectorSubject,
  fixtureSubject,
  isDrawn,
  objectSubject,
  ROUNDING,
  type Subject,
} from './subjects.ts';
import { checkNoSun, sunAsMeasured } from './sun.ts';
import { supports } from './support.ts';
import type { Check } from './types.ts';

/**
 * Checks a detector against every subject of a distance rule. Returns the nearest subject and every one that is not clear. If an airflow has a
 * smaller margin, returns the nearest fixture, with its distance, and that airflow. Without subjects, returns whether somebody looked for one.
 *
 * @param others the other detectors of the level; those of another pair count as objects
 */
export function checkDistances(
  plan: Plan,
  model: LevelModel,
  detector: Detector,
  rule: EffectiveRule,
  others: readonly Detector[],
): Check[] {
  const { tapeTolerance } = plan;
  const detectors = rule.subject.of === 'object' ? obstructingDetectors(detector, others) : [];
  const nearest = new Map<string, Measured>();
  addNearest(nearest, ruleSubjects(plan, model, rule, detector), rule, detector);
  addNearest(nearest, detectors, rule, detector);
  const rows = candidateRows([...nearest.values()], rule, tapeTolerance).map(({ subject, measured }) => ({
    subject,
    check: subjectCheck(rule, subject, measured, detector, tapeTolerance),
  }));
  const isStream = ({ subject }: { readonly subject: Subject }) => subject.keepOut;
  // A clear airflow says less than the distance from the fixture, for which the rule gives a figure.
  const isClearStream = (row: (typeof rows)[number]) => isStream(row) && row.check.verdict === 'clear';
  const shown = new Set(
    [rows, rows.filter((row) => !isStream(row))].flatMap((some) => nearestAndNotClear(some.map(({ check }) => check))),
  );
  const reported = rows
    .filter(({ check }) => shown.has(check))
    .sort((a, b) => Number(isClearStream(a)) - Number(isClearStream(b)) || compareByMargin(a.check, b.check))
    .map(({ check, subject }) => ({ ...check, witness: witnessTo(subject.body, detector, detector.at) }));
  const open = [...notMeasured(plan, model, detector, rule), ...unmeasuredNearby(model, detector, rule, reported)];
  const found = [...reported, ...open];
  if (rule.subject.of === 'sun')
    return sunAsMeasured(
      plan,
      model,
      rule,
      detector,
      found.length > 0 ? found : checkNoSun(plan, model, rule, detector),
    );
  return open.length > 0 || isDrawn(rule, model) ? found : [...found, ...checkAbsent(model, rule)];
}

interface Measured {
  readonly subject: Subject;
  readonly measured: Mm;
}

/** Adds the nearest body of each id, because a wall has several pieces. A fixture's stream has a row of its own. */
function addNearest(
  nearest: Map<string, Measured>,
  subjects: readonly Subject[],
  rule: EffectiveRule,
  detector: Detector,
): void {
  const [x, y] = detector.at;
  for (const subject of subjects) {
    if (!subject.keepOut && rule.least === null && !collides(subject, detector, x, y)) continue;
    const measured = measureSubject(rule, subject, detector, x, y);
    if (measured === null) continue;
    const key = subject.keepOut ? `${subject.id} stream` : subject.id;
    const existing = nearest.get(key);
    if (
      !existing ||
      measured < existing.measured ||
      (measured === existing.measured && isNearer(subject, existing.subject, x, y))
    ) {
      nearest.set(key, { subject, measured });
    }
  }
}

/**
 * Returns the candidates for the nearest row and for rows that are not clear, because creating a row is expensive and
 * there may be hundreds of subjects.
 */
function candidateRows(all: readonly Measured[], rule: EffectiveRule, tapeTolerance: Mm): readonly Measured[] {
  const marginOf = ({ subject, measured }: Measured) => measured - requiredOf(rule, subject);
  const leastOf = (some: readonly Measured[]) =>
    some.reduce((margin, one) => Math.min(margin, marginOf(one)), Number.POSITIVE_INFINITY);
  const least = leastOf(all);
  const solid = all.filter(({ subject }) => !subject.keepOut);
  const leastSolid = solid.length < all.length ? leastOf(solid) : least;
  return all.filter((one) => {
    const bar = one.subject.keepOut ? least : leastSolid;
    return one.measured <= 0 || marginOf(one) < Math.max(tapeTolerance, bar + 2 * ROUNDING);
  });
}

function requiredOf(rule: EffectiveRule, { keepOut }: Subject): Mm {
  return keepOut ? 0 : (rule.least ?? 0);
}

/**
 * Breaks the tie between two bodies under the rim, both measured as 0: the one closer to the axis is nearer, and the
 * line is drawn to it.
 */
function isNearer(a: Subject, b: Subject, x: Mm, y: Mm): boolean {
  return bodyDistance(a.body, x, y) < bodyDistance(b.body, x, y);
}

/** Returns the detectors of other pairs, and those of its own pair that it collides with. */
function obstructingDetectors(detector: Detector, others: readonly Detector[]): Subject[] {
  const subjects: Subject[] = [];
  for (const other of others) {
    if (other.id === detector.id) continue;
    const subject = detectorSubject(other);
    const paired = detector.pair !== null && other.pair === detector.pair;
    if (!paired || collides(subject, detector, ...detector.at)) subjects.push(subject);
  }
  return subjects;
}

function subjectCheck(
  rule: EffectiveRule,
  subject: Subject,
  measured: Mm,
  detector: Detector,
  tapeTolerance: Mm,
): Check {
  const check = {
    ...distanceCheck(rule, subject.id, requiredOf(rule, subject), measured, tapeTolerance),
    ...citationFor(rule, subject.what),
  };
  if (subject.what === 'sun') return check;
  if (subject.keepOut) return { ...check, reason: 'Its airflow.' };
  if (measured > 0 || !collides(subject, detector, ...detector.at)) return check;
  return { ...check, verdict: 'blocked', reason: STANDS_INSIDE };
}

/** The reason for a collision, whatever the limit. */
export const STANDS_INSIDE = 'It stands inside it.';

/**
 * Returns not-run rows for subjects that cannot be measured: items for which the rule has no figure, and air streams
 * that are not drawn.
 */
function notMeasured(plan: Plan, model: LevelModel, detector: Detector, rule: EffectiveRule): Check[] {
  const { subject } = rule;
  if (rule.least === null) {
    const nearest = nearestOf(ruleSubjects(plan, model, rule, detector), detector);
    if (!nearest || collides(nearest, detector, ...detector.at)) return [];
    const reason =
      'The published text gives no figure. A certified or licensed professional decides it on site. Enter that distance under Property; until then this rule is not run.';
    return [{ ...reasonCheck(rule, 'unknown', reason, true), subject: nearest.id }];
  }
  if (subject.of !== 'fixture') return [];
  const undrawn = model.level.fixtures
    .filter(({ kind, stream }) => !stream && subject.streams.includes(kind) && !subject.kinds.includes(kind))
    .filter(({ kind }) => !wasOff(plan, kind))
    .map(fixtureSubject);
  const nearest = nearestOf(undrawn, detector);
  if (!nearest) return [];
  const reason = 'Its airflow direction is not drawn: keep out of its airflow.';
  return [{ ...reasonCheck(rule, 'unknown', reason, true), subject: nearest.id }];
}

/**
 * Returns a not-run row for the nearest object or fixture within the limit in plan that does not count because of its recorded heights, which
 * nobody has measured. Returns no row where the rule is blocked anyway.
 */
function unmeasuredNearby(model: LevelModel, detector: Detector, rule: EffectiveRule, rows: readonly Check[]): Check[] {
  const { subject, least } = rule;
  if (subject.of !== 'object' || least === null || rows.some(({ verdict }) => verdict === 'blocked')) return [];
  const [x, y] = detector.at;
  const { objects, fixtures } = model.level;
  const open = [
    ...objects
      .filter((object) => !supports(object, detector))
      .map((object) => [object, objectSubject(object)] as const),
    ...fixtures
      .filter(({ kind }) => subject.fixtures.includes(kind))
      .map((each) => [each, fixtureSubject(each)] as const),
  ]
    .filter(([{ bottom, top, bottomAnswered, topAnswered }]) => {
      const ends = topAnswered === false && top <= detector.base;
      return ends || (bottomAnswered === false && bottom > detector.base + detector.tall);
    })
    .map(([, each]) => each)
    .filter(({ body }) => Math.max(0, bodyDistance(body, x, y) - detector.radius) < least - LIMIT_TOLERANCE);
  const nearest = nearestOf(open, detector);
  if (!nearest) return [];
  return [{ ...reasonCheck(rule, 'unknown', 'Nobody has measured how high it is.', true), subject: nearest.id }];
}

function nearestOf(subjects: readonly Subject[], { at: [x, y] }: Detector): Subject | null {
  let best: Subject | null = null;
  let least: Mm = Number.POSITIVE_INFINITY;
  for (const subject of subjects) {
    if (subject.keepOut) continue;
    const d = bodyDistance(subject.body, x, y);
    if (d >= least) continue;
    least = d;
    best = subject;
  }
  return best;
}

/** Machines within the distance must be off during the exposure. Not run until the condition for the machine is recorded. */
export function checkRunning(plan: Plan, model: LevelModel, detector: Detector, rule: EffectiveRule): Check[] {
  const { subject } = rule;
  if (subject.of !== 'running' || rule.least === null) return [];
  const [x, y] = detector.at;
  const within = rule.least;
  return model.level.fixtures
    .filter(({ kind }) => subject.kinds.includes(kind))
    .map(({ id, kind, shape }) => ({
      id,
      kind,
      measured: Math.max(0, bodyDistance(shapeBody(shape), x, y) - detector.radius),
    }))
    .filter(({ measured }) => measured < within)
    .sort((a, b) => a.measured - b.measured)
    .map(({ id, kind, measured }) =>
      wasKept(plan, kind)
        ? {
            ...reasonCheck(
              rule,
              'clear',
              `By the answer under House it ${wasOff(plan, kind) ? 'was off' : 'only recirculated'}.`,
            ),
            subject: id,
          }
        : {
            ...reasonCheck(rule, 'unknown', 'It must be off during the exposure.', true),
            subject: id,
            required: within,
            measured,
            margin: measured - within,
          },
    );
}
