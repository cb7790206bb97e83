import { supports } from '../../geometry/check/support.ts';
import { buildLevel } from '../../geometry/level/build-level.ts';
import type { Detector, Level, Plan, PlanObject } from '../../geometry/plan/model.ts';
import { companionSpot, companionSpots } from '../../geometry/search/companion.ts';
import { spotBeside } from '../advice/spot-beside.ts';
import { selectLevel } from './selectors.ts';
import { type Setting, withDetectors } from './side-by-side.ts';
import { useAppStore } from './store.ts';

/**
 * Adds `more` detectors beside this one where their margins are largest, marks them as a pair, and selects the last: one step of history.
 * If no place for a second one passes, it is added where its verdict is best, and the verdict says why. Returns the reason of a refusal, in
 * words; empty on success.
 */
export function setCompanion(detectorId: string, more = 1): string {
  const state = useAppStore.getState();
  const level = selectLevel(state);
  const detector = level.detectors.find(({ id }) => id === detectorId);
  if (!detector) return '';
  const setting = companionSetting(state.plan, level, detector, more);
  if (typeof setting === 'string') {
    state.say(setting);
    return setting;
  }
  const { plan, added } = withDetectors(state.plan, level.id, setting, detector);
  const refusal = state.run(() => plan);
  if (!refusal) state.select(added.slice(-1).map(({ id }) => id));
  return refusal;
}

/** The best places for companions; the reason, in words, if there are none. */
function companionSetting(plan: Plan, level: Level, detector: Detector, more: number): Setting | string {
  const model = buildLevel(level);
  const { base, radius, tall } = detector;
  if (more > 1) {
    const group = companionSpots(plan, model, detector, more);
    if (!group) return `${more} more find no place beside this one. Move it, or place fewer.`;
    return { axes: group.at, base, radius, tall, mutual: group.mutual };
  }
  const best = companionSpot(plan, model, detector);
  const carrier = level.objects.find((object) => supports(object, detector));
  if (!best && carrier) return noRoomOn(carrier);
  const at = best?.at ?? nearestBeside(plan, level, detector);
  if (!at) return 'The protocol of this plan has no distance for a pair. Place the second one yourself.';
  return { axes: [at], base, radius, tall, mutual: true };
}

/** No detector is placed past the edge of a piece of furniture. */
function noRoomOn({ name }: PlanObject): string {
  const where = name.trim() || 'what carries it';
  return `There is no room for a second one beside it on ${where} that every rule leaves. Move it along first, or place both on something larger.`;
}

/**
 * The place with the best verdict for a second detector when none passes. A pair of one cannot be judged, so the second one is added for
 * the computation.
 */
function nearestBeside(plan: Plan, level: Level, detector: Detector) {
  const { at, base, radius, tall } = detector;
  const put = withDetectors(plan, level.id, { axes: [at], base, radius, tall, mutual: true }, detector);
  const paired = put.plan.levels.find(({ id }) => id === level.id);
  const first = paired?.detectors.find(({ id }) => id === detector.id);
  const [second] = put.added;
  return paired && first && second && spotBeside(put.plan, buildLevel(paired), second, first)?.at;
}
