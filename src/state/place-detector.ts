import { USUAL_DETECTOR } from '../../geometry/plan/items.ts';
import type { Detector, Level, Plan, XY } from '../../geometry/plan/model.ts';
import { nearestSpot } from '../../geometry/region/nearest.ts';
import { baseHeightAt } from '../../geometry/snap/base-height.ts';
import type { AppState } from './app-state.ts';
import { selectRegion } from './selectors.ts';

/** Returns the first of the labels A1, A2, ... that no level uses: results and log name a detector by its label. */
export function nextLabel({ levels }: Plan): string {
  let number = 1;
  while (levels.some(({ detectors }) => detectors.some(({ label }) => label === `A${number}`))) number += 1;
  return `A${number}`;
}

/** Returns a detector of the usual size at a spot, on the object that is there. */
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
