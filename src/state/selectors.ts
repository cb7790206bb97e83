import { blockingChecks } from '../../geometry/check/blocking-checks.ts';
import { checkDetector } from '../../geometry/check/check-detector.ts';
import { levelBar } from '../../geometry/check/level.ts';
import type { Check, DetectorReport } from '../../geometry/check/types.ts';
import { levelBelow, levelsInOrder } from '../../geometry/edit/index.ts';
import { buildLevel } from '../../geometry/level/build-level.ts';
import type { LevelModel } from '../../geometry/level/types.ts';
import { USUAL_DETECTOR } from '../../geometry/plan/items.ts';
import type { Detector, Level, Plan } from '../../geometry/plan/model.ts';
import { memoizeRecent } from '../../geometry/plane/memoize.ts';
import { emptyLevel } from '../../geometry/planfile/empty.ts';
import { levelRegion } from '../../geometry/region/level-region.ts';
import type { LevelRegion, Probe } from '../../geometry/region/types.ts';
import type { CheckedLevel } from '../advice/guidance/hint.ts';
import type { AppState } from './app-state.ts';
import { MOST_KEPT, reportsOf } from './judged.ts';
import { withKeptParts, withKeptZones } from './kept.ts';
import { memoizeUntilDoubt, withoutDoubt } from './second.ts';
import { mayWork, timedWork } from './turns.ts';
import { asDrawn } from './without-picture.ts';

/** Everything here is derived, never stored, and the same objects in give the same object out. */

const NO_LEVEL = emptyLevel('none');
const NO_REPORTS: readonly DetectorReport[] = [];
const NO_CHECKS: readonly Check[] = [];

/** The plan as it is seen now: with the gesture under way. */
export function selectShownPlan({ plan, draft }: AppState): Plan {
  return draft ?? plan;
}

/** The level in view; the first when the one that was in view is gone. */
export function selectLevel(state: AppState): Level {
  const { levels } = selectShownPlan(state);
  return levels.find(({ id }) => id === state.levelId) ?? levels[0] ?? NO_LEVEL;
}

/** The last model of each level that was looked at, by its id: what the next one keeps. */
const lastModels = new Map<string, LevelModel>();
const builtModel = memoizeRecent((level: Level): LevelModel => {
  const model = withKeptParts(lastModels.get(level.id) ?? null, buildLevel(level));
  if (lastModels.size >= MOST_KEPT) lastModels.clear();
  lastModels.set(level.id, model);
  return model;
}, MOST_KEPT);
/** Worked out once for all levels that differ in nothing but the picture that is drawn over. */
export const modelOf = memoizeRecent((level: Level): LevelModel => {
  const model = builtModel(asDrawn(level));
  return model.level === level ? model : { ...model, level };
}, MOST_KEPT);
export function selectModel(state: AppState): LevelModel {
  return modelOf(selectLevel(state));
}
/** The level under the one in view, made ready, while it is to be seen; null for none. */
export function selectBelow(state: AppState): LevelModel | null {
  const { id } = selectLevel(state);
  if (!state.showBelow || id === NO_LEVEL.id) return null;
  const below = levelBelow(state.plan, id);
  return below && below.walls.length > 0 ? modelOf(below) : null;
}

const probes = new Map<string, Probe>();
/** The detector that the sheet is shaded for: the selected one's size, at the height that is looked at. */
export function selectProbe(state: AppState): Probe {
  const level = selectLevel(state);
  const chosen = level.detectors.find(({ id }) => state.selection.includes(id)) ?? level.detectors[0] ?? USUAL_DETECTOR;
  return probeOf(state.sitHeight, chosen.radius, chosen.tall);
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

/** Everything that a region is worked out from. Detectors and their labels are not among it: to move one costs no new region. */
function regionInputs(plan: Plan, { level }: LevelModel, probe: Probe): readonly unknown[] {
  const { walls, openings, rooms, fixtures, objects, ceiling, living, ground, id } = level;
  const { protocol, site, visit, tapeTolerance } = plan;
  return [
    walls,
    openings,
    rooms,
    fixtures,
    objects,
    ceiling,
    living,
    ground,
    id,
    protocol,
    site,
    visit,
    tapeTolerance,
    probe,
  ];
}

let lastRegion: {
  readonly levelId: string;
  readonly inputs: readonly unknown[];
  readonly region: LevelRegion;
} | null = null;
/** Where a detector may sit on the level in view; nowhere on a level that is not the one to test, whatever the distances. */
export function selectRegion(state: AppState): LevelRegion {
  const plan = selectShownPlan(state);
  const model = selectModel(state);
  const bar = selectLevelBar(state);
  const inputs = [...regionInputs(plan, model, selectProbe(state)), bar];
  if (!lastRegion?.inputs.every((input, index) => input === inputs[index])) {
    // While a wall is pulled its shading may be a frame behind, while a room is, a few.
    const isPulled = state.draft !== null && lastRegion?.levelId === model.level.id;
    if (isPulled && lastRegion && !mayWork('region', state.selection.length)) return lastRegion.region;
    const region = timedWork('region', () => levelRegion(plan, model, selectProbe(state)));
    lastRegion = {
      levelId: model.level.id,
      inputs,
      region: withKeptZones(lastRegion?.region ?? null, bar ? barredWhole(region, bar) : region),
    };
  }
  return lastRegion.region;
}

/** Why the level in view is not the one to test, in words; empty when it is. */
export function selectLevelBar(state: AppState): string {
  const level = selectLevel(state);
  return level === NO_LEVEL ? '' : levelBar(selectShownPlan(state), level);
}

/** The region of a level that is out as a whole: the engine leaves the choice of the level to the caller. */
function barredWhole(region: LevelRegion, bar: string): LevelRegion {
  const rooms = region.rooms.map((room) =>
    room.barred ? room : { ...room, rings: [], area: 0, barred: bar, barredBy: 'level' as const, decided: true },
  );
  return { ...region, rooms };
}

const reportsAtRest = memoizeUntilDoubt((_: Plan) => new Map<string, readonly DetectorReport[]>(), MOST_KEPT);
function restingReports(state: AppState): readonly DetectorReport[] {
  const plan = selectShownPlan(state);
  const level = selectLevel(state);
  const ofPlan = reportsAtRest(plan);
  const known = ofPlan.get(level.id);
  if (known) return known;
  if (state.draft && lastReports?.levelId === level.id && !mayWork('reports', state.selection.length))
    return hastyReports(state, level);
  const model = modelOf(level);
  const reports = timedWork('reports', () => reportsOf(plan, model));
  ofPlan.set(level.id, reports);
  lastReports = { levelId: level.id, reports };
  return reports;
}

let lastReports: { readonly levelId: string; readonly reports: readonly DetectorReport[] } | null = null;
const reportsInHaste = new WeakMap<Plan, readonly DetectorReport[]>();
/** What is pulled along is judged where it is now; the others may be a frame behind the wall that is pulled. */
function hastyReports(state: AppState, level: Level): readonly DetectorReport[] {
  const plan = selectShownPlan(state);
  const known = reportsInHaste.get(plan);
  if (known) return known;
  const model = modelOf(level);
  const before = (id: string) => lastReports?.reports.find((report) => report.id === id);
  const reports = level.detectors.map((detector) => {
    const pulled = state.selection.includes(detector.id);
    return (pulled ? null : before(detector.id)) ?? checkDetector(plan, model, detector);
  });
  reportsInHaste.set(plan, reports);
  return reports;
}

/** Every level of the plan at rest, the lowest first. */
export const checkedLevels = memoizeUntilDoubt(
  (plan: Plan): readonly CheckedLevel[] =>
    levelsInOrder(plan).map((level) => {
      const model = modelOf(level);
      return { model, reports: reportsOf(plan, model) };
    }),
  MOST_KEPT,
);

const liveReports = new WeakMap<object, { resting: readonly DetectorReport[]; reports: readonly DetectorReport[] }>();
/**
 * A report for every detector of the level, in file order. The one that is carried is judged where it is now, and so are the
 * others of its pair: a companion that is carried away leaves them not clear but alone.
 */
export function selectReports(state: AppState): readonly DetectorReport[] {
  const resting = restingReports(state);
  const { live } = state;
  if (!live) return resting.length === 0 ? NO_REPORTS : resting;
  const known = liveReports.get(live);
  if (known?.resting === resting) return known.reports;
  const carried = selectCarried(state);
  if (!carried) return resting;
  const plan = selectShownPlan(state);
  const model = withCarried(selectModel(state), carried);
  const reports = model.level.detectors.map((each, index) => {
    const touched = each === carried || (carried.pair !== null && each.pair === carried.pair);
    return touched ? checkDetector(plan, model, each) : (resting[index] as DetectorReport);
  });
  const settled = withoutDoubt(reports);
  liveReports.set(live, { resting, reports: settled });
  return settled;
}
function withCarried(model: LevelModel, carried: Detector): LevelModel {
  const detectors = model.level.detectors.map((each) => (each.id === carried.id ? carried : each));
  return { ...model, level: { ...model.level, detectors } };
}
const carriedOf = new WeakMap<object, { resting: Detector; carried: Detector }>();
/** The detector that is carried, where it is now; null when none is. */
export function selectCarried(state: AppState): Detector | null {
  const { live } = state;
  const resting = live && selectLevel(state).detectors.find(({ id }) => id === live.id);
  if (!resting) return null;
  const known = carriedOf.get(live);
  if (known?.resting === resting) return known.carried;
  const carried = { ...resting, at: live.at, base: live.base };
  carriedOf.set(live, { resting, carried });
  return carried;
}

let lastHover: { hover: unknown; region: LevelRegion; checks: readonly Check[] } | null = null;
/** Every rule that keeps a detector away from the spot under the pointer, worst first; none off the sheet. */
export function selectHoverChecks(state: AppState): readonly Check[] {
  const { hover } = state;
  if (!hover) return NO_CHECKS;
  const region = selectRegion(state);
  if (lastHover?.hover === hover && lastHover.region === region) return lastHover.checks;
  const checks = blockingChecks(selectShownPlan(state), selectModel(state), selectProbe(state), hover.at);
  lastHover = { hover, region, checks };
  return checks;
}

interface History {
  readonly pastStates: readonly unknown[];
  readonly futureStates: readonly unknown[];
}
/** Whether a step can be taken back: of the chain that is being drawn, or of the history store. */
export function canUndo({ chain }: AppState, { pastStates }: History): boolean {
  return chain.corners.length + pastStates.length > 0;
}
/** Whether a step can be taken again. */
export function canRedo({ chain }: AppState, { futureStates }: History): boolean {
  return chain.takenBack.length > 0 || (chain.corners.length === 0 && futureStates.length > 0);
}
