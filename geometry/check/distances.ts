import type { LevelModel } from '../level/types.ts';
import type { Detector, Mm, Plan } from '../plan/model.ts';
import { bodyDistance, shapeBody } from '../plane/body.ts';
import { citationFor } from '../rules/citation.ts';
import type { EffectiveRule } from '../rules/profiles.ts';
import { wasKept, wasOff } from '../rules/running.ts';
import { checkAbsent } from './looked-for.ts';
import { byMargin, distanceCheck, measureSubject, nearestAndNotClear, witnessTo, wordCheck } from './measure.ts';
import { detectorSubject, fixtureSubject, isEntered, ROUNDING, type Subject, subjectsOf } from './subjects.ts';
import type { Check } from './types.ts';

/**
 * A detector against everything that a distance rule names: the nearest, and every one that is not clear; where there is none,
 * whether anybody looked.
 *
 * @param others the other detectors of the level: of another pair they are objects
 */
export function checkDistances(
  plan: Plan,
  model: LevelModel,
  detector: Detector,
  rule: EffectiveRule,
  others: readonly Detector[],
): Check[] {
  const { tapeTolerance } = plan;
  const detectors = rule.subject.of === 'object' ? inTheWay(detector, others) : [];
  const nearest = new Map<string, Measured>();
  addNearest(nearest, subjectsOf(rule, model), rule, detector);
  addNearest(nearest, detectors, rule, detector);
  const rows = worthARow([...nearest.values()], rule, tapeTolerance).map(({ subject, measured }) => ({
    subject,
    check: subjectCheck(rule, subject, measured, detector, tapeTolerance),
  }));
  const shown = new Set(nearestAndNotClear(rows.map(({ check }) => check)));
  const judged = rows
    .filter(({ check }) => shown.has(check))
    .sort((a, b) => byMargin(a.check, b.check))
    .map(({ check, subject }) => ({ ...check, witness: witnessTo(subject.body, detector, detector.at) }));
  const found = [...judged, ...notMeasured(plan, model, detector, rule)];
  return found.length > 0 ? found : checkAbsent(model, rule);
}

interface Measured {
  readonly subject: Subject;
  readonly measured: Mm;
}

/** The nearest body of each id: a wall has several pieces. A fixture's stream is a row of its own. */
function addNearest(
  nearest: Map<string, Measured>,
  subjects: readonly Subject[],
  rule: EffectiveRule,
  detector: Detector,
): void {
  const [x, y] = detector.at;
  for (const subject of subjects) {
    if (!subject.stream && rule.least === null && !isEntered(subject, detector, x, y)) continue;
    const measured = measureSubject(rule, subject, detector, x, y);
    if (measured === null) continue;
    const key = subject.stream ? `${subject.id} stream` : subject.id;
    const known = nearest.get(key);
    if (
      !known ||
      measured < known.measured ||
      (measured === known.measured && liesNearer(subject, known.subject, x, y))
    ) {
      nearest.set(key, { subject, measured });
    }
  }
}

/** Those that may be the nearest or not clear: of hundreds of things a few, and a row is dear to make. */
function worthARow(all: readonly Measured[], rule: EffectiveRule, tapeTolerance: Mm): readonly Measured[] {
  const marginOf = ({ subject, measured }: Measured) => measured - requiredOf(rule, subject);
  const least = all.reduce((margin, one) => Math.min(margin, marginOf(one)), Number.POSITIVE_INFINITY);
  return all.filter((one) => one.measured <= 0 || marginOf(one) < Math.max(tapeTolerance, least + 2 * ROUNDING));
}

function requiredOf(rule: EffectiveRule, { stream }: Subject): Mm {
  return stream ? 0 : (rule.least ?? 0);
}

/** Of two bodies under the rim, which both measure 0, the one nearer to the axis: the line on the drawing goes there. */
function liesNearer(a: Subject, b: Subject, x: Mm, y: Mm): boolean {
  return bodyDistance(a.body, x, y) < bodyDistance(b.body, x, y);
}

/** Detectors of another pair, and of its own those that it stands in. */
function inTheWay(detector: Detector, others: readonly Detector[]): Subject[] {
  const subjects: Subject[] = [];
  for (const other of others) {
    if (other.id === detector.id) continue;
    const subject = detectorSubject(other);
    const paired = detector.pair !== null && other.pair === detector.pair;
    if (!paired || isEntered(subject, detector, ...detector.at)) subjects.push(subject);
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
  if (subject.stream) return { ...check, reason: 'Its stream of air.' };
  if (measured > 0 || !isEntered(subject, detector, ...detector.at)) return check;
  return { ...check, verdict: 'blocked', reason: STANDS_INSIDE };
}

/** Said of a body that the detector is in, whatever the limit. */
export const STANDS_INSIDE = 'It stands inside it.';

/** What the rule names without giving anything to measure: things without a figure, and streams that nobody has drawn. */
function notMeasured(plan: Plan, model: LevelModel, detector: Detector, rule: EffectiveRule): Check[] {
  const { subject } = rule;
  if (rule.least === null) {
    const nearest = nearestOf(subjectsOf(rule, model), detector);
    if (!nearest || isEntered(nearest, detector, ...detector.at)) return [];
    const reason = 'The published text gives no figure. A professional judges it on site; here it stays not run.';
    return [{ ...wordCheck(rule, 'unknown', reason, true), subject: nearest.id }];
  }
  if (subject.of !== 'fixture') return [];
  const undrawn = model.level.fixtures
    .filter(({ kind, stream }) => !stream && subject.streams.includes(kind) && !subject.kinds.includes(kind))
    .filter(({ kind }) => !wasOff(plan, kind))
    .map(fixtureSubject);
  const nearest = nearestOf(undrawn, detector);
  if (!nearest) return [];
  const reason = 'Its stream of air is not drawn: keep out of it.';
  return [{ ...wordCheck(rule, 'unknown', reason, true), subject: nearest.id }];
}

function nearestOf(subjects: readonly Subject[], { at: [x, y] }: Detector): Subject | null {
  let best: Subject | null = null;
  let least: Mm = Number.POSITIVE_INFINITY;
  for (const subject of subjects) {
    if (subject.stream) continue;
    const d = bodyDistance(subject.body, x, y);
    if (d >= least) continue;
    least = d;
    best = subject;
  }
  return best;
}

/** Machines within the distance have to be off while the detector lies out: not run until the question about the house is answered. */
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
            ...wordCheck(
              rule,
              'clear',
              `By the answer under House it ${wasOff(plan, kind) ? 'was off' : 'only recirculated'}.`,
            ),
            subject: id,
          }
        : {
            ...wordCheck(rule, 'unknown', 'It has to be off while the detector lies out.', true),
            subject: id,
            required: within,
            measured,
            margin: measured - within,
          },
    );
}
