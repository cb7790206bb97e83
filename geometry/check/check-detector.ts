import { buildLevel } from '../level/build-level.ts';
import type { LevelModel, Room } from '../level/types.ts';
import type { Detector, Plan } from '../plan/model.ts';
import { type EffectiveRule, effectiveRules } from '../rules/profiles.ts';
import { checkCompanion } from './companion.ts';
import { checkDistances, checkRunning } from './distances.ts';
import { checkCeiling, checkHeightOn } from './heights.ts';
import { checkLevel } from './level.ts';
import { worstVerdict } from './measure.ts';
import { checkRoom, roomAt } from './room.ts';
import { checkSupport } from './support.ts';
import type { Check, DetectorReport } from './types.ts';

/** Checks every detector of the plan against the plan's profile. */
export function checkPlan(plan: Plan): { levels: { id: string; detectors: DetectorReport[] }[] } {
  return {
    levels: plan.levels.map((level) => {
      const model = buildLevel(level);
      return { id: level.id, detectors: level.detectors.map((detector) => checkDetector(plan, model, detector)) };
    }),
  };
}

/**
 * Checks one detector against the plan's profile. Returns, for each rule that applies, the nearest subject and every
 * subject that is not clear, in profile order, the smallest margin first. The detector need not belong to the level:
 * a dragged one is checked at its current position; its companion is any other detector of the level with the same
 * pair.
 *
 * @param others the other detectors to measure against: those of the level, or none to check a position only
 */
export function checkDetector(
  plan: Plan,
  model: LevelModel,
  detector: Detector,
  others: readonly Detector[] = model.level.detectors,
): DetectorReport {
  const room = roomAt(model, detector.at);
  const scene = { plan, model, detector, room, others };
  const checks = effectiveRules(plan.protocol).flatMap((rule) => checkRule(scene, rule));
  return { id: detector.id, verdict: worstVerdict(checks), room: room?.label?.id ?? null, checks };
}

interface Scene {
  readonly plan: Plan;
  readonly model: LevelModel;
  readonly detector: Detector;
  readonly room: Room | null;
  readonly others: readonly Detector[];
}

function checkRule({ plan, model, detector, room, others }: Scene, rule: EffectiveRule): Check[] {
  const { tapeTolerance } = plan;
  switch (rule.subject.of) {
    case 'room':
      return [checkRoom(model, detector, room, rule)];
    case 'level':
      return [checkLevel(plan, model.level, rule)];
    case 'height':
      return checkHeightOn(model.level, detector, rule, tapeTolerance);
    case 'ceiling':
      return checkCeiling(model.level, detector, rule, tapeTolerance);
    case 'support':
      return checkSupport(model.level, detector, rule);
    case 'companion':
      return checkCompanion(model, detector, room, rule, tapeTolerance, others);
    case 'running':
      return checkRunning(plan, model, detector, rule);
    default:
      return checkDistances(plan, model, detector, rule, others);
  }
}
