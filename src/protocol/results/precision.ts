import type { Source } from '../../../geometry/rules/types.ts';
import { MSQA, NEW_JERSEY, ourReading, source } from '../sources.ts';
import {
  absolute,
  asNumber,
  atLeast,
  compare,
  dividedBy,
  type Exact,
  exact,
  exactOf,
  meanOf,
  minus,
  rounded,
  times,
} from './exact.ts';

/** The difference of a collocated pair against the control limits. */
export type ControlStatus = 'in-control' | 'warning' | 'out-of-control';

/** Control limits of a pair's difference for one range of its mean. Percentages are of the mean. */
export interface PrecisionBand {
  /** Lower end of the range, inclusive: mean in pCi/L, rounded to one decimal. */
  readonly from: number;
  /** Upper end, exclusive; null for none. */
  readonly below: number | null;
  /** The statistic: the relative percent difference, or the difference in pCi/L. */
  readonly of: 'percent' | 'difference';
  /** Average of a process in control, percent; null if no text gives one. */
  readonly typical: number | null;
  readonly warning: number;
  /** Null if no text gives one. */
  readonly control: number | null;
  readonly sources: readonly Source[];
}

const FROM_MEMORY = source('memory', 'EPA 402-R-92-003, App. B');
const FOR_LABORATORIES = ourReading(
  'ANSI/AARST MS-QA-2019, Table 7.1, written for duplicates in a laboratory, for pairs in a home',
);

/**
 * The bands, by the mean as reported at one decimal: 3.95 is reported as 4.0 and belongs to the upper band (the New Jersey text leaves 3.9
 * to 4.0 open). A difference in pCi/L counts above its limit; a percentage at or above it, the strict reading.
 */
export const PRECISION_BANDS: readonly PrecisionBand[] = [
  {
    from: 4,
    below: null,
    of: 'percent',
    typical: 14,
    warning: 28,
    control: 36,
    sources: [MSQA('3.5.1-3.5.2'), NEW_JERSEY('10(c)1'), FROM_MEMORY],
  },
  {
    from: 2,
    below: 4,
    of: 'percent',
    typical: 25,
    warning: 50,
    control: 67,
    sources: [NEW_JERSEY('10(c)1'), MSQA('3.5.2 (warning)'), FOR_LABORATORIES, FROM_MEMORY],
  },
  {
    from: 0,
    below: 2,
    of: 'difference',
    typical: null,
    warning: 1,
    control: null,
    sources: [NEW_JERSEY('10(c)1'), FOR_LABORATORIES],
  },
];

/** Two texts give the same limits differently: MS-QA-2019 "at or above" (strict), N.J.A.C. 7:28-27.10(c)1 "above" (other). */
type LimitReading = 'strict' | 'other';

export interface Precision {
  readonly band: PrecisionBand;
  readonly status: ControlStatus;
  /** Status by the other reading of the limits if it differs; else null. */
  readonly otherReading: ControlStatus | null;
}

/** Returns 100 |a - b| over their mean, percent, exactly; null where both are zero. */
export function relativePercentDifference(a: Exact, b: Exact): Exact | null {
  const mean = meanOf([a, b]);
  if (mean.numerator === 0n) return null;
  return times(dividedBy(absolute(minus(a, b)), mean), exact(100n));
}

/** Returns the sample standard deviation of a pair over its mean, percent: the relative percent difference over √2. Null where both are zero. */
export function coefficientOfVariation(a: Exact, b: Exact): number | null {
  const rpd = relativePercentDifference(a, b);
  return rpd && asNumber(rpd) / Math.SQRT2;
}

/** Returns the band of a mean, pCi/L. */
export function bandOf(mean: Exact): PrecisionBand {
  const shown = rounded(mean, 1);
  const band = PRECISION_BANDS.find(({ from }) => atLeast(shown, exactOf(from)));
  // The last band begins at zero: no concentration is below it.
  return band ?? (PRECISION_BANDS.at(-1) as PrecisionBand);
}

/** Returns how two results, pCi/L, compare with the limits of the band of `mean`, which may be the mean of more results than these two. */
export function precisionOf(a: Exact, b: Exact, mean: Exact = meanOf([a, b])): Precision {
  const band = bandOf(mean);
  const status = controlStatusBy(a, b, band, 'strict');
  const other = controlStatusBy(a, b, band, 'other');
  return { band, status, otherReading: other === status ? null : other };
}

function controlStatusBy(a: Exact, b: Exact, band: PrecisionBand, reading: LimitReading): ControlStatus {
  const measured = band.of === 'percent' ? (relativePercentDifference(a, b) ?? exact(0n)) : absolute(minus(a, b));
  const beyond = (limit: number) =>
    compare(measured, exactOf(limit)) >= (band.of === 'percent' && reading === 'strict' ? 0 : 1);
  if (band.control !== null && beyond(band.control)) return 'out-of-control';
  return beyond(band.warning) ? 'warning' : 'in-control';
}
