import { levelName } from '../../geometry/plan/nouns.ts';
import { levelRegion } from '../../geometry/region/level-region.ts';
import { JUST_INSIDE, nearestSpot } from '../../geometry/region/nearest.ts';
import { formatMeasured } from '../../geometry/units/index.ts';
import type { AppState } from './app-state.ts';
import { selectLevel, selectModel } from './selectors.ts';

/** Moves a detector to the nearest clear spot of its level; shows a message if the level has none. */
export function moveToNearest(state: AppState, detectorId: string): void {
  const detector = selectLevel(state).detectors.find(({ id }) => id === detectorId);
  if (!detector) return;
  const { base, radius, tall } = detector;
  const { plan } = state;
  // The tape's tolerance is kept as spare distance: a detector that the app has moved is clear, not only tight.
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
