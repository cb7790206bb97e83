import { USUAL_DETECTOR } from '../../geometry/plan/items.ts';
import type { Detector, Level, Plan, XY } from '../../geometry/plan/model.ts';
import { levelName } from '../../geometry/plan/nouns.ts';
import { levelRegion } from '../../geometry/region/level-region.ts';
import { JUST_INSIDE, nearestSpot } from '../../geometry/region/nearest.ts';
import { baseHeightAt } from '../../geometry/snap/base-height.ts';
import { formatMeasured } from '../../geometry/units/index.ts';
import type { AppState } from './app-state.ts';
import { selectLevel, selectModel, selectRegion } from './selectors.ts';

/** Returns the next label of the sort A1, A2, ... that no level has yet: results and log name a detector by it. */
export function nextLabel({ levels }: Plan): string {
  let number = 1;
  while (levels.some(({ detectors }) => detectors.some(({ label }) => label === `A${number}`))) number += 1;
  return `A${number}`;
}

/** Returns a detector of the usual size for a spot, on what stands there. */
export function newDetector(plan: Plan, level: Level, at: XY): Omit<Detector, 'id'> {
  const base = baseHeightAt(level, at, USUAL_DETECTOR.base);
  return { label: nextLabel(plan), at, ...USUAL_DETECTOR, base, pair: null };
}

/** Returns the clear spot that is nearest to the middle of the stage; the middle itself where the level has none. */
export function freeSpot(state: AppState): XY {
  const { viewport, stageSize } = state;
  const middle: XY = [
    (stageSize.width / 2 - viewport.x) / viewport.scale,
    (stageSize.height / 2 - viewport.y) / viewport.scale,
  ];
  return nearestSpot(selectRegion(state), middle)?.at ?? middle;
}

/** Moves a detector to the nearest clear spot of its level; says so when the level has none. */
export function moveToNearest(state: AppState, detectorId: string): void {
  const detector = selectLevel(state).detectors.find(({ id }) => id === detectorId);
  if (!detector) return;
  const { base, radius, tall } = detector;
  const { plan } = state;
  // With the tape's tolerance to spare: a detector that the app has moved is clear, not only tight.
  const region = levelRegion(
    plan,
    selectModel(state),
    { base, radius, tall },
    { spare: plan.tapeTolerance + JUST_INSIDE },
  );
  const spot = nearestSpot(region, detector.at);
  if (!spot) {
    const height = formatMeasured(base, plan.display.length);
    state.say(
      `No spot on ${levelName(selectLevel(state))} is clear ${height} above the floor. Change the height, or look on another level.`,
    );
    return;
  }
  state.updateItem(detectorId, { at: spot.at });
}
