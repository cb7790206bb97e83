import { checkDetector } from '../../geometry/check/check-detector.ts';
import type { DetectorReport } from '../../geometry/check/types.ts';
import type { LevelModel } from '../../geometry/level/types.ts';
import type { Plan } from '../../geometry/plan/model.ts';
import { memoize, memoizeLatest } from '../../geometry/plane/memoize.ts';
import type { LevelRegion } from '../../geometry/region/types.ts';
import type { AppState } from './app-state.ts';
import { createDragScheduler } from './drag-scheduler.ts';
import {
  areReportsKnown,
  knownRegion,
  reportsAtRest,
  selectLevel,
  selectModel,
  selectRegion,
  selectShownPlan,
  withDragged,
} from './selectors.ts';

/**
 * The results that the stage and the panels show. At rest they are those of the selectors. While walls are dragged, the region and the
 * reports of detectors that are not dragged may be those of the last frame that had time to compute them; dragged detectors are checked in
 * every frame.
 */

const scheduler = createDragScheduler(() => performance.now());
/** Whether a result was deferred since the last call: then another frame is needed to show it. */
export const takeDeferred = scheduler.takeDeferred;

/** The results of the last frame that had time for them, with their level. Not a cache: they are shown while newer ones are deferred. */
let lastRegion: { readonly levelId: string; readonly region: LevelRegion } | null = null;
let lastReports: { readonly levelId: string; readonly reports: readonly DetectorReport[] } | null = null;

/** Where a detector may be placed on the level in view, as it is drawn. */
export function shownRegion(state: AppState): LevelRegion {
  const levelId = selectLevel(state).id;
  let region = knownRegion(state);
  if (!region) {
    const isDrag = state.previewPlan !== null && lastRegion?.levelId === levelId;
    if (isDrag && lastRegion && !scheduler.mayRun('region', state.selection.length)) return lastRegion.region;
    region = scheduler.run('region', () => selectRegion(state));
  }
  lastRegion = { levelId, region };
  return region;
}

/** A report for every detector of the level in view, in file order, as the stage and the panels show it. */
export function shownReports(state: AppState): readonly DetectorReport[] {
  return withDragged(state, standingReports(state));
}

function standingReports(state: AppState): readonly DetectorReport[] {
  const levelId = selectLevel(state).id;
  if (!areReportsKnown(state)) {
    const last = state.previewPlan !== null && lastReports?.levelId === levelId ? lastReports.reports : null;
    if (last && !scheduler.mayRun('reports', state.selection.length)) {
      return mixedReports(selectShownPlan(state))(selectModel(state), state.selection, last);
    }
    scheduler.run('reports', () => reportsAtRest(state));
  }
  const reports = reportsAtRest(state);
  lastReports = { levelId, reports };
  return reports;
}

/**
 * New reports of dragged detectors, with the last ones of the others. Memoized by plan, because the panels may still ask about the plan of
 * the frame before.
 */
const mixedReports = memoize((plan: Plan) =>
  memoizeLatest((model: LevelModel, selection: readonly string[], before: readonly DetectorReport[]) =>
    model.level.detectors.map((detector) => {
      const isDragged = selection.includes(detector.id);
      const last = isDragged ? null : before.find(({ id }) => id === detector.id);
      return last ?? checkDetector(plan, model, detector);
    }),
  ),
);
