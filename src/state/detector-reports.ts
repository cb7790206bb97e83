import { checkDetector } from '../../geometry/check/check-detector.ts';
import type { DetectorReport } from '../../geometry/check/types.ts';
import type { LevelModel } from '../../geometry/level/types.ts';
import type { Level, Plan } from '../../geometry/plan/model.ts';
import { memoizeLatest, memoizeRecent } from '../../geometry/plane/memoize.ts';
import { drawingKey } from './drawing-key.ts';
import { withoutDoubt } from './second-opinion.ts';
import { sunVersion } from './sun-version.ts';

/** The reports of the detectors of a level, cached for as long as nothing that a check reads has changed. */

/** Number of levels, and of plans, whose models and reports are cached; the undo history holds hundreds. */
export const CACHE_SIZE = 24;
const reportsOn = memoizeRecent(
  (_: Level) =>
    memoizeLatest(
      (plan: Plan, model: LevelModel): readonly DetectorReport[] =>
        model.level.detectors.map((detector) => checkDetector(plan, model, detector)),
      (plan) => [...planInputs(plan), sunVersion()],
    ),
  CACHE_SIZE,
);

/**
 * Returns the reports of a level's detectors, in file order. They depend on the level and on everything in the plan but the drawings
 * of its other levels; of those only on what the choice of the level to test depends on.
 */
export function reportsOf(plan: Plan, model: LevelModel): readonly DetectorReport[] {
  return withoutDoubt(firstReportsOf(plan, model));
}

/** Returns the same by the first computation alone, whatever the result of the second. */
export function firstReportsOf(plan: Plan, model: LevelModel): readonly DetectorReport[] {
  return reportsOn(drawingKey(model.level))(plan, model);
}

const planInputs = memoizeRecent(
  ({ levels, ...rest }: Plan): readonly unknown[] => [
    ...Object.values(rest),
    ...levels.flatMap(({ id, name, order, living, livingAnswered, ground, groundAnswered }) => [
      id,
      name,
      order,
      living,
      livingAnswered,
      ground,
      groundAnswered,
    ]),
  ],
  CACHE_SIZE,
);
