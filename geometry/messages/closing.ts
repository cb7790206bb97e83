import type { Plan } from '../plan/model.ts';
import type { ClosingError } from '../snap/closing.ts';
import { formatLength } from '../units/index.ts';

/**
 * Describes a closing error: the gap, its components across and down the page, and its fraction of the total length.
 */
export function describeClosing(
  { gap, across, down, around, share }: ClosingError,
  unit: Plan['display']['length'],
): string {
  const length = (mm: number) => formatLength(Math.abs(mm), unit);
  const parts = [
    { by: across, words: `${length(across)} to the ${across > 0 ? 'right' : 'left'}` },
    { by: down, words: `${length(down)} ${down > 0 ? 'down' : 'up'}` },
  ].filter(({ by }) => length(by) !== length(0));
  const where = parts.length > 0 ? `: ${parts.map(({ words }) => words).join(' and ')}` : '';
  return `The walls miss their start by ${length(gap)}${where}, ${percent(share)} of the ${length(around)} round.`;
}

function percent(share: number): string {
  const hundredths = share * 100;
  return `${hundredths < 0.1 ? 'less than 0.1' : hundredths.toFixed(1)}%`;
}
