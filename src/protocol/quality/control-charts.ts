import { absolute, asNumber, compare, type Exact, exact, exactOf, minus } from '../results/exact.ts';
import { PRECISION_BANDS, type PrecisionBand } from '../results/precision.ts';
import type { PairRecord } from './quality-book.ts';
import { OWN_LIMITS_FROM, RUN_OF_WARNINGS, SHARE_LIMITS } from './requirements.ts';

export type PointVerdict = 'in-control' | 'warning' | 'out-of-control';

/** One pair on a control chart. */
export interface ChartPoint {
  readonly pair: PairRecord;
  /** Percent of the mean, or pCi/L on the chart of differences. */
  readonly value: Exact;
  readonly verdict: PointVerdict;
  /** Whether it is the last of a run of warnings: out of control by the run rule, regardless of its value. */
  readonly endsRun: boolean;
}

/** The control chart of one kind of device and one band of means: its pairs by date, and its limits. */
export interface ControlChart {
  /** Empty as long as there is no pair of any kind. */
  readonly device: string;
  readonly band: PrecisionBand;
  readonly points: readonly ChartPoint[];
  readonly warning: number;
  /** Null if no text gives one. */
  readonly control: number | null;
  /** Whether the limits are computed from the user's own pairs: from 20 on, where they are tighter. */
  readonly own: boolean;
  /** Exceeded limits with the corrective action, the worst first. */
  readonly flags: readonly string[];
}

/**
 * Returns the charts of every kind of device that has a pair, by name, and of each the chart of every band, the upper one first; also of
 * bands without a pair. Kinds are never mixed: N.J.A.C. 7:28-27.10(c) asks for pairs of each type, and between pairs of another kind a
 * run of warnings, or a share of them, would not show.
 */
export function controlCharts(pairs: readonly PairRecord[]): readonly ControlChart[] {
  const devices = [...new Set(pairs.map(({ device }) => device))].sort();
  return (devices.length > 0 ? devices : ['']).flatMap((device) =>
    PRECISION_BANDS.map((band) =>
      chartOf(
        device,
        band,
        pairs.filter((pair) => pair.device === device && pair.band === band),
      ),
    ),
  );
}

function chartOf(device: string, band: PrecisionBand, pairs: readonly PairRecord[]): ControlChart {
  const values = pairs.map((pair) => statistic(band, pair));
  const lines = linesOf(band, values);
  // Two results below the detection limit are in control: our reading of ANSI/AARST MS-QA-2019, Table 7.1, for laboratory duplicates.
  const verdict = (pair: PairRecord, value: Exact) => (pair.below ? 'in-control' : verdictOf(value, lines, band));
  const placed = pairs
    .map((pair, i) => ({ pair, value: values[i] as Exact, verdict: verdict(pair, values[i] as Exact) }))
    .sort(bySequence);
  const points = placed.map(
    (point, index): ChartPoint => ({
      ...point,
      endsRun: isRun(placed.slice(0, index + 1).map((each) => each.verdict)),
    }),
  );
  return { device, band, points, ...lines, flags: flagsOf(points) };
}

type Placed = Omit<ChartPoint, 'endsRun'>;
const SEVERITY: Readonly<Record<PointVerdict, number>> = { 'in-control': 0, warning: 1, 'out-of-control': 2 };

/** By date. Of one time the worst comes last: the order in which plans are named must not decide which pair is the last. */
const bySequence = (a: Placed, b: Placed): number =>
  (a.pair.at ?? 0) - (b.pair.at ?? 0) || SEVERITY[a.verdict] - SEVERITY[b.verdict] || compare(a.value, b.value);

/** Returns the points that may be the last: those of the last date, and those without a date. */
export function lastPoints(points: readonly ChartPoint[]): readonly ChartPoint[] {
  const last = points.at(-1)?.pair.at ?? null;
  return points.filter(({ pair }) => pair.at === null || pair.at === last);
}

function statistic(band: PrecisionBand, { values: [a, b], rpd }: PairRecord): Exact {
  return band.of === 'difference' ? absolute(minus(a, b)) : (rpd ?? exact(0n));
}

interface Lines {
  readonly warning: number;
  readonly control: number | null;
  readonly own: boolean;
}

/**
 * Returns the limits. Own limits are the differences that chance exceeds in 5 and 1 of 100 pairs: 1.96 and 2.576 standard deviations of
 * a difference (normal distribution). They are never looser than the published limits.
 */
function linesOf(band: PrecisionBand, values: readonly Exact[]): Lines {
  const published = { warning: band.warning, control: band.control, own: false };
  if (band.control === null || values.length < OWN_LIMITS_FROM.pairs) return published;
  const meanSquare = values.reduce((sum, value) => sum + asNumber(value) ** 2, 0) / values.length;
  const spread = Math.sqrt(meanSquare);
  const [warning, control] = [Math.min(band.warning, 1.96 * spread), Math.min(band.control, 2.576 * spread)];
  return { warning, control, own: warning < band.warning || control < band.control };
}

function verdictOf(value: Exact, { warning, control }: Lines, band: PrecisionBand): PointVerdict {
  // The strict reading: a percentage at its limit exceeds it; a difference in pCi/L only above.
  const least = band.of === 'percent' ? 0 : 1;
  // Own limits of identical pairs are zero; two equal results exceed no limit.
  if (value.numerator === 0n) return 'in-control';
  if (control !== null && compare(value, exactOf(control)) >= least) return 'out-of-control';
  return compare(value, exactOf(warning)) >= least ? 'warning' : 'in-control';
}

function isRun(verdicts: readonly PointVerdict[]): boolean {
  const last = verdicts.slice(-RUN_OF_WARNINGS.length);
  return last.length === RUN_OF_WARNINGS.length && last.every((verdict) => verdict !== 'in-control');
}

function flagsOf(points: readonly ChartPoint[]): readonly string[] {
  const count = (wanted: PointVerdict) => points.filter(({ verdict }) => verdict === wanted).length;
  const share = (part: number) => (100 * part) / Math.max(1, points.length);
  const [out, warned] = [count('out-of-control'), count('warning')];
  const flags: string[] = [];
  const stops = lastPoints(points).filter(({ verdict }) => verdict === 'out-of-control');
  if (stops.length > 0) {
    const which = stops.some(({ pair }) => pair.at !== null) ? 'The last pair' : 'A pair without a date';
    flags.push(`${which} is out of control: stop measuring with these devices until the cause is found.`);
  }
  if (points.some(({ endsRun }) => endsRun)) {
    flags.push('Two warnings came one after another: treat it as out of control and look for the cause.');
  }
  if (share(out) > SHARE_LIMITS.control) {
    flags.push(
      `${out} of ${points.length} pairs are out of control, more than 1 in 100: look for the cause, correct it, write it down.`,
    );
  }
  if (share(warned + out) > SHARE_LIMITS.warning) {
    flags.push(
      `${warned + out} of ${points.length} pairs are in warning or beyond, more than 1 in 20: look for the cause and record it.`,
    );
  }
  return flags;
}
