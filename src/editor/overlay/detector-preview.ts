import { checkDetector } from '../../../geometry/check/check-detector.ts';
import type { DetectorReport } from '../../../geometry/check/types.ts';
import type { LevelModel } from '../../../geometry/level/types.ts';
import type { Detector, Plan } from '../../../geometry/plan/model.ts';
import { memoizeLatest } from '../../../geometry/plane/memoize.ts';
import type { AppState } from '../../state/app-state.ts';
import { selectModel, selectShownPlan } from '../../state/selectors.ts';
import type { Sketch } from './sketch.ts';

/** A detector that follows the pointer and is not placed yet, with its report where it is. */
export interface DetectorPreview {
  readonly detector: Detector;
  readonly report: DetectorReport;
}

const checked = memoizeLatest((preview: Omit<Detector, 'id'>, plan: Plan, model: LevelModel): DetectorPreview => {
  const detector: Detector = { id: '', ...preview };
  return { detector, report: checkDetector(plan, model, detector) };
});

/** Returns the detector that is to be placed, with its report; null for none. */
export function detectorPreview(state: AppState, { previewDetector }: Sketch): DetectorPreview | null {
  return previewDetector && checked(previewDetector, selectShownPlan(state), selectModel(state));
}
