import { unmeasuredCarrier } from '../check/support.ts';
import type { Detector, Level, PlanObject, XY } from '../plan/model.ts';
import { formatMeasured, type LengthUnit } from '../units/index.ts';
import { subjectName } from './subject.ts';

/** "The height of the desk is not measured: 2 ft 6 in is assumed."; empty where it is. */
export function describeAssumedTop(level: Level, { id, top, topAnswered }: PlanObject, unit: LengthUnit): string {
  if (topAnswered !== false) return '';
  return `The height of ${subjectName(level, id)} is not measured: ${formatMeasured(top, unit)} is assumed.`;
}

/** The same of what carries detectors that would stand at a place, a sentence for each thing; empty where their heights are measured. */
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
