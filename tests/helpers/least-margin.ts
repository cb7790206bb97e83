import {
  checkDetector,
  effectiveRules,
  type LevelModel,
  type Plan,
  type Probe,
  type XY,
} from '../../geometry/index.ts';

/** The least that `checkDetector` reports over the distance rules in plan and in space, without the pair; infinite for none. */
export function leastMargin(plan: Plan, model: LevelModel, probe: Probe, at: XY): number {
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
