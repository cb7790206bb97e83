import type { Kit } from '../../../geometry/plan/test-record.ts';
import { hoursAreKnown, labDaysAreKnown } from './exposure-limits.ts';

/** The figures that the instructions of a kit give: hours of exposure, days to the laboratory. */
export type KitFigure = 'minimumHours' | 'maximumHours' | 'labDays';

/**
 * Returns the kit with a figure of its instructions entered. The hours are answered once both were entered: while one is not, it has the
 * initial value of a new plan.
 * @param entered the figures that were entered before this one
 */
export function withKitFigure(kit: Kit, entered: ReadonlySet<KitFigure>, figure: KitFigure, value: number): Kit {
  const now = new Set([...entered, figure]);
  const hours = hoursAreKnown({ kit }) || (now.has('minimumHours') && now.has('maximumHours'));
  return withAnswers({ ...kit, [figure]: value }, hours, labDaysAreKnown({ kit }) || now.has('labDays'));
}

/** Returns the kit with its hours, and its days to the laboratory, answered or open. */
export function withAnswers(kit: Kit, hours: boolean, labDays: boolean): Kit {
  const { hoursAnswered: _hours, labDaysAnswered: _days, ...rest } = kit;
  return {
    ...rest,
    ...(hours ? {} : { hoursAnswered: false }),
    ...(labDays === hours ? {} : { labDaysAnswered: labDays }),
  };
}
