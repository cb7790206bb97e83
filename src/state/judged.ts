import { checkDetector } from '../../geometry/check/check-detector.ts';
import type { DetectorReport } from '../../geometry/check/types.ts';
import type { LevelModel } from '../../geometry/level/types.ts';
import type { Level, Plan } from '../../geometry/plan/model.ts';
import { memoizeRecent } from '../../geometry/plane/memoize.ts';
import { withoutDoubt } from './second.ts';
import { asDrawn } from './without-picture.ts';

/** The detectors of a level judged, kept for as long as nothing that a check could look at has changed. */

interface Judged {
  readonly basis: readonly unknown[];
  readonly reports: readonly DetectorReport[];
}
/** Levels, and plans, whose models and reports are kept: the steps that can be taken back hold hundreds. */
export const MOST_KEPT = 24;
const slotOf = memoizeRecent((_: Level): { judged: Judged | null } => ({ judged: null }), MOST_KEPT);

/**
 * Reports of a level's detectors, in file order. The level and everything in the plan beside the drawings of its other levels
 * counts as looked at; of those only what the choice of the level to test hangs on.
 */
export function reportsOf(plan: Plan, model: LevelModel): readonly DetectorReport[] {
  return withoutDoubt(firstReportsOf(plan, model));
}

/** The same, of the first computation alone. */
export function firstReportsOf(plan: Plan, model: LevelModel): readonly DetectorReport[] {
  const { level } = model;
  const basis = basisOf(plan);
  const slot = slotOf(asDrawn(level));
  const known = slot.judged;
  if (known?.basis.length === basis.length && known.basis.every((value, index) => value === basis[index]))
    return known.reports;
  const reports = level.detectors.map((detector) => checkDetector(plan, model, detector));
  slot.judged = { basis, reports };
  return reports;
}

const basisOf = memoizeRecent(
  ({ levels, ...rest }: Plan): readonly unknown[] => [
    ...Object.values(rest),
    ...levels.flatMap(({ id, name, order, living, livingAnswered, ground }) => [
      id,
      name,
      order,
      living,
      livingAnswered,
      ground,
    ]),
  ],
  MOST_KEPT,
);
