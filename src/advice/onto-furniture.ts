import { supports } from '../../geometry/check/support.ts';
import type { Detector, Level, Plan, PlanObject } from '../../geometry/plan/model.ts';

/** Returns the objects below a detector, each of which would carry its whole foot at another height than the present one. */
export function carriersBelow({ objects }: Level, detector: Detector): readonly PlanObject[] {
  return objects.filter((object) => !supports(object, detector) && wouldCarry(object, detector));
}

/** Returns the ids of the detectors that are set on an object together: the given one, and those of its pair that the object would carry too. */
export function carriedTogether({ detectors }: Level, detector: Detector, object: PlanObject): readonly string[] {
  const isPaired = ({ id, pair }: Detector) => id === detector.id || (pair !== null && pair === detector.pair);
  return detectors.filter((each) => isPaired(each) && wouldCarry(object, each)).map(({ id }) => id);
}

/** Sets detectors on an object: their undersides at the height of its top. */
export function setOnto(plan: Plan, ids: readonly string[], object: PlanObject): Plan {
  const onto = (detector: Detector): Detector =>
    ids.includes(detector.id) ? { ...detector, base: object.top, support: null } : detector;
  return { ...plan, levels: plan.levels.map((level) => ({ ...level, detectors: level.detectors.map(onto) })) };
}

const wouldCarry = (object: PlanObject, detector: Detector): boolean =>
  object.top > 0 && supports(object, { ...detector, base: object.top });
