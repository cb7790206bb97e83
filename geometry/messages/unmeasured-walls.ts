import type { Level } from '../plan/model.ts';
import { counted, listed } from '../plan/nouns.ts';
import { formatMeasured, type LengthUnit } from '../units/index.ts';

/** Returns "The thickness of 4 walls is not measured. Assumed: 8 in."; "" if every thickness is measured. */
export function describeUnmeasuredWalls({ walls }: Level, unit: LengthUnit): string {
  const open = walls.filter(({ thicknessAnswered }) => thicknessAnswered === false);
  if (open.length === 0) return '';
  const figures = [...new Set(open.map(({ thickness }) => formatMeasured(thickness, unit)))];
  return `The thickness of ${counted(open.length, 'wall')} is not measured. Assumed: ${listed(figures)}.`;
}
