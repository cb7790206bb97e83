import { useMemo } from 'react';
import type { DetectorReport } from '../../../geometry/check/types.ts';
import { TONES, toneOf } from '../../../geometry/messages/index.ts';
import type { Level, Plan } from '../../../geometry/plan/model.ts';
import { guidance, type StageState } from '../../advice/guidance.ts';
import type { AppState } from '../../state/app-state.ts';
import { checkedLevels, selectLevel, selectShownPlan } from '../../state/selectors.ts';
import { shownReports } from '../../state/shown-results.ts';
import { useAppStore } from '../../state/store.ts';
import { sunVersion } from '../../state/sun-version.ts';
import { testStateOf } from '../../state/test-state.ts';
import { useMinute } from './use-minute.ts';
import { useThrottled } from './use-throttled.ts';

/** Returns the level in view, with the preview of the current gesture. */
export const useLevel = (): Level => useThrottled(selectLevel);
export const usePlan = (): Plan => useThrottled(selectShownPlan);

/** Returns what is done and missing at each stage, over all levels. Uses the plan at rest, which a drag does not change. */
export function useGuidance(): readonly StageState[] {
  const plan = useAppStore((state) => state.plan);
  const inViewId = useAppStore((state) => selectLevel(state).id);
  const now = useMinute();
  const doubts = useAppStore(({ second }) => second?.doubts);
  const sun = useAppStore(sunVersion);
  // biome-ignore lint/correctness/useExhaustiveDependencies: a doubt and the sun change what the levels are judged
  return useMemo(
    () => guidance(plan, checkedLevels(plan), testStateOf(plan), inViewId, now),
    [plan, inViewId, now, doubts, sun],
  );
}

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
