import type { Check } from '../../geometry/check/types.ts';
import type { LevelModel } from '../../geometry/level/types.ts';
import type { Detector, Mm, Plan, XY } from '../../geometry/plan/model.ts';
import { distance } from '../../geometry/plane/point.ts';
import { airPath } from '../../geometry/search/air-path.ts';
import { formatLength, type LengthUnit } from '../../geometry/units/index.ts';

/** The route of the air from a fixture to a detector: information only, no rule depends on it. */
export interface AirRoute {
  /** From the fixture to the middle of the detector; null if no door or passage leads there. */
  readonly points: readonly XY[] | null;
  readonly words: string;
}

/** Routes whose lengths differ by less than this, mm, count as equal: a tape over such a length is not read more precisely. */
const SAME: Mm = 25.4;

/**
 * Returns the route of the air for a check of moving air: from the point on the fixture that the rule measures from, around the walls and
 * through the doors, to the rim. Null for a check that measures no distance, e.g. of a stream of air.
 */
export function airRoute(plan: Plan, model: LevelModel, detector: Detector, check: Check): AirRoute | null {
  if (!check.witness || check.measured === null || !check.required) return null;
  const path = airPath(model, check.witness.subject, detector.at);
  if (!path) {
    return {
      points: null,
      words: 'Around the walls no door or passage leads there. The rule measures in a straight line.',
    };
  }
  const straight = distance(check.witness.subject, detector.at);
  if (path.length - straight < SAME) {
    return {
      points: path.points,
      words: 'There is no wall between: the air takes the straight line that the rule measures.',
    };
  }
  const far = aboutLength(Math.max(0, path.length - detector.radius), plan.display.length);
  return {
    points: path.points,
    words: `Around the walls it is ${far}; the rule measures in a straight line. Doors are counted as open.`,
  };
}

/** Rounded to 1 in or 5 cm: doors are counted as open, and such a route is not measured with a tape. */
function aboutLength(mm: Mm, unit: LengthUnit): string {
  const step = unit === 'metric' ? 50 : 25.4;
  return formatLength(Math.round(mm / step) * step, unit);
}
