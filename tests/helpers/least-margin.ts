import { checkDetector } from '../../geometry/check/check-detector.ts';
import { measureSubject } from '../../geometry/check/measure.ts';
import {
  type Subject,
  sharesHeight,
  subjectSupports,
  subjectsOf,
  supportedDepth,
} from '../../geometry/check/subjects.ts';
import type { LevelModel } from '../../geometry/level/types.ts';
import type { Plan, XY } from '../../geometry/plan/model.ts';
import { bodyDistance } from '../../geometry/plane/body.ts';
import { LIMIT_TOLERANCE } from '../../geometry/plane/tolerances.ts';
import type { Probe } from '../../geometry/region/types.ts';
import { type EffectiveRule, effectiveRules } from '../../geometry/rules/profiles.ts';

/** Returns the least of measured − required over the distance rules, mm, measured with the functions of the checker; infinite for none. */
export function leastMargin(plan: Plan, model: LevelModel, probe: Probe, at: XY): number {
  const margins = effectiveRules(plan.protocol).flatMap((rule) =>
    subjectsOf(rule, model).map((subject) => {
      const inside = depthInside(rule, subject, probe, at);
      if (inside !== null) return inside;
      if (!subject.keepOut && rule.least === null) return Number.POSITIVE_INFINITY;
      const measured = measureSubject(rule, subject, probe, ...at);
      return measured === null ? Number.POSITIVE_INFINITY : measured - (subject.keepOut ? 0 : (rule.least ?? 0));
    }),
  );
  return Math.min(...margins);
}

/**
 * Returns the distance of the rim from a body that shares the probe's height, mm, negative inside it, which every check blocks. Null unless
 * the limit is within the tolerance (overridden to zero, or none published).
 */
export function depthInside(rule: EffectiveRule, subject: Subject, probe: Probe, [x, y]: XY): number | null {
  if (subject.keepOut || (rule.least ?? 0) > LIMIT_TOLERANCE || !sharesHeight(subject, probe)) return null;
  return bodyDistance(subject.body, x, y) - probe.radius;
}

/** Returns the least margin that `checkDetector` reports over the same rules; of several within a millionth of a mm it may be any. */
export function leastReported(plan: Plan, model: LevelModel, probe: Probe, at: XY): number {
  const measured = new Set(
    effectiveRules(plan.protocol)
      .filter(({ subject: { of }, measured }) => of !== 'companion' && (measured === 'plan' || measured === 'space'))
      .map(({ id }) => id),
  );
  const { checks } = checkDetector(plan, model, { ...probe, id: '(probe)', label: '', at, pair: null }, []);
  const rules = effectiveRules(plan.protocol);
  const insides = rules.flatMap((rule) =>
    subjectsOf(rule, model).flatMap((subject) => depthInside(rule, subject, probe, at) ?? []),
  );
  return Math.min(
    ...insides,
    ...checks.filter(({ rule, notRun }) => measured.has(rule) && !notRun).map(({ margin }) => margin ?? Infinity),
  );
}

/** Returns whether a subject higher than the probe's underside supports it: for a field it is an obstacle unless it is the named carrier. */
export function isOnRaisedTop(plan: Plan, model: LevelModel, probe: Probe, [x, y]: XY): boolean {
  return effectiveRules(plan.protocol).some((rule) =>
    subjectsOf(rule, model).some(
      (subject) => supportedDepth(rule, subject, probe) !== null && subjectSupports(subject, probe, x, y),
    ),
  );
}
