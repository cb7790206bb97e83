import { blockingChecks } from '../../geometry/check/blocking-checks.ts';
import { checkDetector } from '../../geometry/check/check-detector.ts';
import { levelBar } from '../../geometry/check/level.ts';
import type { Check, DetectorReport } from '../../geometry/check/types.ts';
import { levelBelow, levelsInOrder } from '../../geometry/edit/index.ts';
import { buildLevel } from '../../geometry/level/build-level.ts';
import type { LevelModel } from '../../geometry/level/types.ts';
import { USUAL_DETECTOR } from '../../geometry/plan/items.ts';
import type { Detector, Level, Plan } from '../../geometry/plan/model.ts';
import { memoize, memoizeLatest, memoizeRecent } from '../../geometry/plane/memoize.ts';
import { emptyLevel } from '../../geometry/planfile/empty.ts';
import { regionUnderBar } from '../../geometry/region/barred-level.ts';
import { levelRegion } from '../../geometry/region/level-region.ts';
import type { LevelRegion, Probe } from '../../geometry/region/types.ts';
import type { CheckedLevel } from '../advice/guidance/hint.ts';
import type { AppState, Hover } from './app-state.ts';
import { CACHE_SIZE, reportsOf } from './detector-reports.ts';
import { drawingKey } from './drawing-key.ts';
import { memoizeUntilDoubt, withoutDoubt } from './second-opinion.ts';
import { shareModelParts, shareZones } from './structural-sharing.ts';
import { sunVersion } from './sun-version.ts';

/** Pure selectors: everything here is derived from the state, and the same objects in give the same object out. */

const NO_LEVEL = emptyLevel('none');
const NO_REPORTS: readonly DetectorReport[] = [];
const NO_CHECKS: readonly Check[] = [];

/** The plan as it is shown: with the gesture under way. */
export function selectShownPlan({ plan, previewPlan }: AppState): Plan {
  return previewPlan ?? plan;
}

/** Whether a gesture has not ended yet: what is shown is not what is stored. */
export function isGestureUnderWay({ previewPlan, draggedDetector }: AppState): boolean {
  return previewPlan !== null || draggedDetector !== null;
}

/** The level in view; the first if the one that was in view is deleted. */
export function selectLevel(state: AppState): Level {
  return levelInView(selectShownPlan(state), state.levelId);
}
/** The level in view without the gesture under way. */
export function selectLevelAtRest({ plan, levelId }: AppState): Level {
  return levelInView(plan, levelId);
}
function levelInView({ levels }: Plan, levelId: string): Level {
  return levels.find(({ id }) => id === levelId) ?? levels[0] ?? NO_LEVEL;
}

/** The last model of each level by its id; the next model keeps its unchanged parts. */
const lastModels = new Map<string, LevelModel>();
const builtModel = memoizeRecent((level: Level): LevelModel => {
  const model = shareModelParts(lastModels.get(level.id) ?? null, buildLevel(level));
  if (lastModels.size >= CACHE_SIZE) lastModels.clear();
  lastModels.set(level.id, model);
  return model;
}, CACHE_SIZE);
/**
 * The model of a level, built once for all levels that differ only in their tracing image. It is a new object whenever more direct sun is
 * computed, because results that are memoized by the model contain verdicts.
 */
export const modelOf = (level: Level): LevelModel => modelSince(level)(sunVersion());
const modelSince = memoizeRecent((level: Level) => {
  const first = sunVersion();
  return memoizeLatest((version: number): LevelModel => {
    const model = builtModel(drawingKey(level));
    return model.level === level && version === first ? model : { ...model, level };
  });
}, CACHE_SIZE);
export function selectModel(state: AppState): LevelModel {
  return modelOf(selectLevel(state));
}
/** The model of the level under the one in view, if it is to be shown; null for none. */
export function selectBelow(state: AppState): LevelModel | null {
  return state.showBelow ? modelBelow(state) : null;
}
/** Whether there is a level with walls under the one in view. */
export const hasLevelBelow = (state: AppState): boolean => modelBelow(state) !== null;
function modelBelow(state: AppState): LevelModel | null {
  const { id } = selectLevel(state);
  if (id === NO_LEVEL.id) return null;
  const below = levelBelow(state.plan, id);
  return below && below.walls.length > 0 ? modelOf(below) : null;
}

const probes = new Map<string, Probe>();
/** The probe that the zones are drawn for: the size of the selected detector, else of the first, else the usual size, at `sitHeight`. */
export function selectProbe(state: AppState): Probe {
  return probeFor(selectLevel(state), state);
}
/** The same without the gesture under way. */
export function selectProbeAtRest(state: AppState): Probe {
  return probeFor(selectLevelAtRest(state), state);
}
function probeFor({ detectors }: Level, { selection, sitHeight }: AppState): Probe {
  const chosen = detectors.find(({ id }) => selection.includes(id)) ?? detectors[0] ?? USUAL_DETECTOR;
  return probeOf(sitHeight, chosen.radius, chosen.tall);
}
function probeOf(base: number, radius: number, tall: number): Probe {
  const key = `${base}/${radius}/${tall}`;
  let probe = probes.get(key);
  if (!probe) {
    probe = { base, radius, tall };
    probes.set(key, probe);
  }
  return probe;
}

/** Everything that a region depends on. Detectors and their labels are not part of it, so moving one needs no new region. */
function regionInputs(plan: Plan, { level }: LevelModel, probe: Probe, bar: string): readonly unknown[] {
  const { walls, openings, rooms, fixtures, objects, ceiling, living, ground, id } = level;
  const { protocol, site, visit, tapeTolerance } = plan;
  const drawing = [walls, openings, rooms, fixtures, objects, ceiling, living, ground, id];
  return [...drawing, protocol, site, visit, tapeTolerance, probe, bar, sunVersion()];
}

const regionOf = memoizeLatest(
  (plan: Plan, model: LevelModel, probe: Probe, bar: string): LevelRegion =>
    regionUnderBar(levelRegion(plan, model, probe), bar),
  regionInputs,
  shareZones,
);
const regionArgs = (state: AppState) =>
  [selectShownPlan(state), selectModel(state), selectProbe(state), selectLevelBar(state)] as const;

/** Where a detector may be placed on the level in view; nowhere on a level that is not the one to test, whatever the distances. */
export const selectRegion = (state: AppState): LevelRegion => regionOf(...regionArgs(state));
/** The same if it is cached, else null. */
export const knownRegion = (state: AppState): LevelRegion | null => regionOf.peek(...regionArgs(state));

/** Why the level in view is not the one to test, in words; empty when it is. */
export function selectLevelBar(state: AppState): string {
  const level = selectLevel(state);
  return level === NO_LEVEL ? '' : levelBar(selectShownPlan(state), level);
}

const reportsOfPlan = memoizeUntilDoubt((_: Plan) => new Map<string, readonly DetectorReport[]>(), CACHE_SIZE);
/** A report for every detector of the level in view, in file order; a dragged detector is checked at its place in the plan. */
export function reportsAtRest(state: AppState): readonly DetectorReport[] {
  const plan = selectShownPlan(state);
  const level = selectLevel(state);
  const known = reportsOfPlan(plan).get(level.id);
  if (known) return known;
  const reports = reportsOf(plan, modelOf(level));
  reportsOfPlan(plan).set(level.id, reports);
  return reports;
}

/** Every level of the plan at rest, the lowest first. */
export const checkedLevels = memoizeUntilDoubt(
  (plan: Plan): readonly CheckedLevel[] =>
    levelsInOrder(plan).map((level) => {
      const model = modelOf(level);
      return { model, reports: reportsOf(plan, model) };
    }),
  CACHE_SIZE,
);

/** Whether the reports at rest of this state are cached. */
export const areReportsKnown = (state: AppState): boolean =>
  reportsOfPlan(selectShownPlan(state)).has(selectLevel(state).id);

/**
 * A report for every detector of the level in view, in file order. A dragged detector is checked where it is now. So are the others of its
 * pair, since their verdict depends on its place.
 */
export function selectReports(state: AppState): readonly DetectorReport[] {
  return withDragged(state, reportsAtRest(state));
}

/** The reports at rest with those that the drag of a detector changes. */
export function withDragged(state: AppState, resting: readonly DetectorReport[]): readonly DetectorReport[] {
  const dragged = selectDragged(state);
  if (!dragged) return resting.length === 0 ? NO_REPORTS : resting;
  return withoutDoubt(reportsWith(dragged)(selectShownPlan(state), selectModel(state), resting));
}

/** Memoized by the dragged detector, which is a new object at every move, because panels may still ask about the move before. */
const reportsWith = memoize((dragged: Detector) =>
  memoizeLatest((plan: Plan, model: LevelModel, resting: readonly DetectorReport[]): readonly DetectorReport[] => {
    const detectors = model.level.detectors.map((each) => (each.id === dragged.id ? dragged : each));
    const there = { ...model, level: { ...model.level, detectors } };
    return detectors.map((each, index) => {
      const touched = each === dragged || (dragged.pair !== null && each.pair === dragged.pair);
      return touched ? checkDetector(plan, there, each) : (resting[index] as DetectorReport);
    });
  }),
);

const draggedOf = memoize(({ at, base }: NonNullable<AppState['draggedDetector']>) =>
  memoizeLatest((resting: Detector): Detector => ({ ...resting, at, base })),
);
/** The detector that is dragged, where it is now; null when none is. */
export function selectDragged(state: AppState): Detector | null {
  const { draggedDetector } = state;
  const resting = draggedDetector && selectLevel(state).detectors.find(({ id }) => id === draggedDetector.id);
  return resting ? draggedOf(draggedDetector)(resting) : null;
}

const hoverChecks = memoizeLatest(blockingChecks);
/** Every rule that keeps a detector away from a spot, by default that under the pointer, worst first; none off the stage. */
export function selectHoverChecks(state: AppState, hover: Hover | null = state.hover): readonly Check[] {
  if (!hover) return NO_CHECKS;
  return hoverChecks(selectShownPlan(state), selectModel(state), selectProbe(state), hover.at);
}

interface History {
  readonly pastStates: readonly unknown[];
  readonly futureStates: readonly unknown[];
}
/** Whether there is a step to undo, of the chain that is being drawn or of the history store. */
export function canUndo({ chain }: AppState, { pastStates }: History): boolean {
  return chain.corners.length + pastStates.length > 0;
}
/** Whether there is a step to redo. */
export function canRedo({ chain }: AppState, { futureStates }: History): boolean {
  return chain.takenBack.length > 0 || (chain.corners.length === 0 && futureStates.length > 0);
}
