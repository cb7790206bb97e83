import { supports } from '../../geometry/check/support.ts';
import { buildLevel } from '../../geometry/level/build-level.ts';
import type { Detector, Level, Plan, PlanObject } from '../../geometry/plan/model.ts';
import { companionSpot, companionSpots } from '../../geometry/search/companion.ts';
import { spotBeside } from '../advice/spot-beside.ts';
import { selectLevel } from './selectors.ts';
import { type Setting, withDetectors } from './side-by-side.ts';
import { useAppStore } from './store.ts';

/**
 * Sets one more detector beside this one, or several, where they have the most to spare, marks them as a pair, and selects the
 * last: one step of history. Where no second one passes, it is set where its verdict is best, and that says why. Returns
 * why not, in words; empty when it did.
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

/** Where companions stand best; why not, in words, where they cannot. */
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

/** Nothing is set past the edge of a piece of furniture. */
function noRoomOn({ name }: PlanObject): string {
  const where = name.trim() || 'what carries it';
  return `There is no room for a second one beside it on ${where} that every rule leaves. Move it along first, or place both on something larger.`;
}

/** Where a second one is judged best when none passes: a pair of one cannot be judged, so it is put down for the time being. */
function nearestBeside(plan: Plan, level: Level, detector: Detector) {
  const { at, base, radius, tall } = detector;
  const put = withDetectors(plan, level.id, { axes: [at], base, radius, tall, mutual: true }, detector);
  const paired = put.plan.levels.find(({ id }) => id === level.id);
  const first = paired?.detectors.find(({ id }) => id === detector.id);
  const [second] = put.added;
  return paired && first && second && spotBeside(put.plan, buildLevel(paired), second, first)?.at;
}
