import { absolute, compare, decimalText, minus } from './exact.ts';
import { type LocationReport, OUT_OF_CONTROL } from './location-report.ts';
import type { PrecisionBand } from './precision.ts';

/** The meaning of each pair status, in a sentence. */
const PAIR_STATUS_TEXT: Readonly<Record<LocationReport['pairStatus'], string>> = {
  'in-control': 'The two results agree.',
  warning: 'The two results are farther apart than they should be: a warning. Look for the cause.',
  'out-of-control': OUT_OF_CONTROL,
  'straddles-by-two':
    'One result is at the action level or above, the other below, and the higher is at least twice the lower.',
  single: 'A single result, with no collocated result to compare it with.',
};

/** A result below the detection limit counts as that limit, the closest that it can be to the other result. */
const AGREE_AT_LIMIT =
  'Counted as its limit, the result below the detection limit agrees with the other. It can be lower, and farther from it.';

/** Whether only the lower of two results is below the detection limit: the computed difference is then the least possible. */
function isLowerBelowLimit({ set, values }: LocationReport): boolean {
  const [first, second] = set.readings.map(({ belowLimit }) => belowLimit === true);
  const [a, b] = values;
  if (set.readings.length !== 2 || !a || !b || first === second) return false;
  return first ? compare(a, b) <= 0 : compare(b, a) <= 0;
}

/** Returns sentences: the pair status, the difference, and the limits that apply. A single result has its status only. */
export function describePair(report: LocationReport): readonly string[] {
  const { pairStatus, precision } = report;
  const lines = [
    pairStatus === 'in-control' && isLowerBelowLimit(report) ? AGREE_AT_LIMIT : PAIR_STATUS_TEXT[pairStatus],
  ];
  if (!precision) return lines;
  const figure = apartText(report);
  if (figure) lines.push(`${figure}.`);
  // A pair that straddles the action level is not evaluated by its band.
  if (pairStatus !== 'straddles-by-two') {
    lines.push(bandText(precision.band));
    if (precision.otherReading) {
      lines.push(
        `It lies exactly on a limit: read as "more than", it would be ${precision.otherReading.replaceAll('-', ' ')}.`,
      );
    }
  }
  return lines;
}

/** Returns the statistic of a pair: "Relative percent difference: 2.5 %", or below 2 pCi/L the difference. Empty for a single result. */
function apartText(report: LocationReport): string {
  const { values, rpd, precision } = report;
  const least = isLowerBelowLimit(report) ? 'at least ' : '';
  const percent = rpd ? `Relative percent difference: ${least}${decimalText(rpd, 1)}%` : '';
  const [a, b] = values;
  if (precision?.band.of !== 'difference' || values.length !== 2 || !a || !b) return percent;
  return [`Difference: ${least}${decimalText(absolute(minus(a, b)), 2)} pCi/L`, percent.replace('R', 'r')]
    .filter(Boolean)
    .join('; ');
}

/** Returns the limits of a band: "For an average of 4.0 pCi/L or above: a warning from 28%, out of control from 36%, 14% is usual." */
function bandText({ of, warning, control, typical, ...range }: PrecisionBand): string {
  const limit = (value: number) => (of === 'percent' ? `from ${value}%` : `above ${value.toFixed(1)} pCi/L`);
  const limits = [
    `a warning ${limit(warning)}`,
    ...(control === null ? [] : [`out of control ${limit(control)}`]),
    ...(typical === null ? [] : [`${typical}% is usual`]),
  ];
  return `For an average ${rangeText(range)}: ${limits.join(', ')}.`;
}

/** Returns the range of means, which are compared as reported, at one decimal. */
function rangeText({ from, below }: Pick<PrecisionBand, 'from' | 'below'>): string {
  if (below === null) return `of ${from.toFixed(1)} pCi/L or above`;
  if (from === 0) return `below ${below.toFixed(1)} pCi/L`;
  return `from ${from.toFixed(1)} pCi/L to below ${below.toFixed(1)} pCi/L`;
}
