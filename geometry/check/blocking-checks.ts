import type { LevelModel } from '../level/types.ts';
import type { Plan, XY } from '../plan/model.ts';
import { checkDetector } from './check-detector.ts';
import { compareVerdicts } from './measure.ts';
import type { Cylinder } from './subjects.ts';
import type { Check } from './types.ts';

/**
 * Returns why a probe may not be at a point: every check that is blocked or undecided, the worst first, then by margin.
 * Empty where it may. Other detectors and checks that were not run are ignored.
 */
export function blockingChecks(plan: Plan, model: LevelModel, probe: Cylinder, at: XY): readonly Check[] {
  const { checks } = checkDetector(plan, model, { ...probe, id: '', label: '', at, pair: null }, []);
  return checks
    .filter(({ verdict, notRun }) => !notRun && (verdict === 'blocked' || verdict === 'unknown'))
    .sort((a, b) => compareVerdicts(a.verdict, b.verdict) || (a.margin ?? 0) - (b.margin ?? 0));
}
