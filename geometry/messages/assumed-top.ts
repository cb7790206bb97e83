import { unmeasuredCarrier } from '../check/support.ts';
import type { Detector, Level, PlanObject, XY } from '../plan/model.ts';
import { formatMeasured, type LengthUnit } from '../units/index.ts';
import { subjectName } from './subject.ts';

/** Returns "The height of the desk is not measured: 2 ft 6 in is assumed."; "" if it is measured. */
export function describeAssumedTop(level: Level, { id, top, topAnswered }: PlanObject, unit: LengthUnit): string {
  if (topAnswered !== false) return '';
  return `The height of ${subjectName(level, id)} is not measured: ${formatMeasured(top, unit)} is assumed.`;
}

/** Returns that sentence for each object that would support a detector at one of the axes; "" if their heights are measured. */
export function describeAssumedTops(
  level: Level,
  axes: readonly XY[],
  size: Pick<Detector, 'base' | 'radius' | 'tall'>,
  unit: LengthUnit,
): string {
  const { base, radius, tall } = size;
  const carriers = axes.flatMap((at) => unmeasuredCarrier(level, { at, base, radius, tall }) ?? []);
  return [...new Set(carriers)].map((object) => describeAssumedTop(level, object, unit)).join(' ');
}
