import { checkDetector } from '../../geometry/check/check-detector.ts';
import type { DetectorReport } from '../../geometry/check/types.ts';
import type { LevelModel } from '../../geometry/level/types.ts';
import type { Detector, Plan } from '../../geometry/plan/model.ts';
import { memoizeLatest } from '../../geometry/plane/memoize.ts';
import type { AppState } from '../state/app-state.ts';
import { selectModel, selectShownPlan } from '../state/selectors.ts';
import type { Sketch } from './sketch.ts';

/** A detector that follows the pointer and is not placed yet, with its report where it is. */
export interface JudgedGhost {
  readonly detector: Detector;
  readonly report: DetectorReport;
}

const checkedGhost = memoizeLatest((ghost: Omit<Detector, 'id'>, plan: Plan, model: LevelModel): JudgedGhost => {
  const detector: Detector = { id: '', ...ghost };
  return { detector, report: checkDetector(plan, model, detector) };
});

/** Null while none is to be placed. */
export function judgedGhost(state: AppState, { ghostDetector }: Sketch): JudgedGhost | null {
  return ghostDetector && checkedGhost(ghostDetector, selectShownPlan(state), selectModel(state));
}
