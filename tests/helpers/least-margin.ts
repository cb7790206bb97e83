import { measureSubject } from '../../geometry/check/measure.ts';
import { subjectsOf } from '../../geometry/check/subjects.ts';
import {
  checkDetector,
  effectiveRules,
  type LevelModel,
  type Plan,
  type Probe,
  type XY,
} from '../../geometry/index.ts';

/** The least of measured − required over the distance rules, with what the checker measures with; infinite for none. */
export function leastMargin(plan: Plan, model: LevelModel, probe: Probe, at: XY): number {
  const margins = effectiveRules(plan.protocol).flatMap((rule) =>
    subjectsOf(rule, model).map((subject) => {
      if (!subject.stream && rule.least === null) return Number.POSITIVE_INFINITY;
      const measured = measureSubject(rule, subject, probe, ...at);
      return measured === null ? Number.POSITIVE_INFINITY : measured - (subject.stream ? 0 : (rule.least ?? 0));
    }),
  );
  return Math.min(...margins);
}

/** The least that `checkDetector` reports over the same rules; of several within a millionth of a mm it may be any. */
export function leastReported(plan: Plan, model: LevelModel, probe: Probe, at: XY): number {
  const measured = new Set(
    effectiveRules(plan.protocol)
      .filter(({ subject: { of }, measured }) => of !== 'companion' && (measured === 'plan' || measured === 'space'))
      .map(({ id }) => id),
  );
  const { checks } = checkDetector(plan, model, { ...probe, id: '(probe)', label: '', at, pair: null });
  return Math.min(
    ...checks.filter(({ rule, notRun }) => measured.has(rule) && !notRun).map(({ margin }) => margin ?? Infinity),
  );
}
