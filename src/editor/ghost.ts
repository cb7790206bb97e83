import { checkDetector } from '../../geometry/check/check-detector.ts';
import type { DetectorReport } from '../../geometry/check/types.ts';
import type { Detector } from '../../geometry/plan/model.ts';
import type { AppState } from '../state/app-state.ts';
import { selectModel, selectShownPlan } from '../state/selectors.ts';
import type { Sketch } from './sketch.ts';

/** A detector that is in hand and not set down yet, and what is said of it where it is. */
export interface JudgedGhost {
  readonly detector: Detector;
  readonly report: DetectorReport;
}

let last: { readonly inputs: readonly unknown[]; readonly judged: JudgedGhost } | null = null;

/** Judged once for each place that it comes to, however many ask. Null while none is in hand. */
export function judgedGhost(state: AppState, { ghostDetector }: Sketch): JudgedGhost | null {
  if (!ghostDetector) return null;
  const [plan, model] = [selectShownPlan(state), selectModel(state)];
  const inputs = [ghostDetector, plan, model] as const;
  if (!last?.inputs.every((input, index) => input === inputs[index])) {
    const detector: Detector = { id: '', ...ghostDetector };
    last = { inputs, judged: { detector, report: checkDetector(plan, model, detector) } };
  }
  return last.judged;
}
