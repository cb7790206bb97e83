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

/** How far two results of one place may be apart. */
export type ControlStatus = 'in-control' | 'warning' | 'out-of-control';

/** Limits of the difference of a pair for one range of its mean. Percentages are of the mean. */
export interface PrecisionBand {
  /** Of the mean, pCi/L, rounded at one decimal: from here ... */
  readonly from: number;
  /** ... to below here; null for no end. */
  readonly below: number | null;
  /** The statistic: the relative percent difference, or the plain difference in pCi/L. */
  readonly of: 'percent' | 'difference';
  /** What a process in control shows on average, percent; null where the texts give none. */
  readonly typical: number | null;
  readonly warning: number;
  /** null where the texts give none. */
  readonly control: number | null;
  readonly sources: readonly Source[];
}

const FROM_MEMORY = source('memory', 'EPA 402-R-92-003, App. B');
const FOR_LABORATORIES = ourReading(
  'ANSI/AARST MS-QA-2019, Table 7.1, written for duplicates in a laboratory, for pairs in a home',
);

/**
 * The bands by the mean as reported, with one decimal: 3.95 reads 4.0 and belongs to the upper one (the New Jersey text
 * leaves 3.9 to 4.0 open). A plain difference is judged as "more than"; a percentage by the strict reading, "at or above".
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

/** Two texts give the same figures with different signs: MS-QA-2019 "at or above", N.J.A.C. 7:28-27.10(c)1 "above". */
type LimitReading = 'strict' | 'other';

export interface Precision {
  readonly band: PrecisionBand;
  readonly status: ControlStatus;
  /** What the other reading of the limits makes of it, where that differs; else null. */
  readonly otherReading: ControlStatus | null;
}

/** 100 |a - b| over their mean, percent, exactly; null where both are zero. */
export function relativePercentDifference(a: Exact, b: Exact): Exact | null {
  const mean = meanOf([a, b]);
  if (mean.numerator === 0n) return null;
  return times(dividedBy(absolute(minus(a, b)), mean), exact(100n));
}

/** Sample standard deviation of a pair over its mean, percent: the relative percent difference over the root of 2. */
export function coefficientOfVariation(a: Exact, b: Exact): number | null {
  const rpd = relativePercentDifference(a, b);
  return rpd && asNumber(rpd) / Math.SQRT2;
}

/** The band of a mean, pCi/L. */
export function bandOf(mean: Exact): PrecisionBand {
  const shown = rounded(mean, 1);
  const band = PRECISION_BANDS.find(({ from }) => atLeast(shown, exactOf(from)));
  // The last band begins at zero, and no concentration is below.
  return band ?? (PRECISION_BANDS.at(-1) as PrecisionBand);
}

/** Holds two results, pCi/L, against the limits of the band of their mean, or of the mean of the set that they belong to. */
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
