import type { DetectorReport } from '../../../geometry/check/types.ts';
import { TONES, toneOf } from '../../../geometry/messages/index.ts';
import type { Level, Plan } from '../../../geometry/plan/model.ts';
import type { AppState } from '../../state/app-state.ts';
import { selectLevel, selectShownPlan } from '../../state/selectors.ts';
import { shownReports } from '../../state/shown-results.ts';
import { useThrottled } from './use-throttled.ts';

/** Returns the level in view, with the preview of the current gesture. */
export const useLevel = (): Level => useThrottled(selectLevel);
export const usePlan = (): Plan => useThrottled(selectShownPlan);

/** Returns the id of the detector that the verdict panel shows: the selected one, else the one with the worst verdict; null for none. */
export function selectSpokenId(state: AppState): string | null {
  const level = selectLevel(state);
  const chosen = level.detectors.find(({ id }) => state.selection.includes(id));
  if (chosen) return chosen.id;
  return worst(shownReports(state))?.id ?? null;
}

function worst(reports: readonly DetectorReport[]): DetectorReport | undefined {
  return reports.reduce<DetectorReport | undefined>(
    (least, each) => (!least || TONES.indexOf(toneOf(each)) < TONES.indexOf(toneOf(least)) ? each : least),
    undefined,
  );
}
