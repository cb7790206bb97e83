import { counted } from '../../../geometry/messages/index.ts';
import type { QualityCheck } from '../../../geometry/plan/test-record.ts';
import type { Source } from '../../../geometry/rules/types.ts';
import type { PrecisionBand } from '../results/precision.ts';
import { MSQA, NEW_JERSEY } from '../sources.ts';
import { type ControlChart, lastPoints, type PointVerdict } from './control-charts.ts';
import { type CheckRecord, outstanding, type QcCount, type QualityBook } from './quality-book.ts';
import { OWN_LIMITS_FROM, type QcRequirement } from './requirements.ts';

/** Status of a control chart, in the terms of placement verdicts. */
export type ChartStatus = 'clear' | 'tight' | 'blocked' | 'not-run';

export const POINT_WORD: Readonly<Record<PointVerdict, string>> = {
  'in-control': 'in control',
  warning: 'warning',
  'out-of-control': 'out of control',
};

export const CHECK_WORD: Readonly<Record<CheckRecord['verdict'], string>> = {
  clear: 'met',
  warning: 'warning',
  'out-of-control': 'out of control',
  unknown: 'unknown',
};

/** Returns "Means of 2.0 to 3.9 pCi/L": means are compared at one decimal. */
function bandName({ from, below }: PrecisionBand): string {
  if (below === null) return `Means of ${from.toFixed(1)} pCi/L and more`;
  if (from === 0) return `Means below ${below.toFixed(1)} pCi/L`;
  return `Means of ${from.toFixed(1)} to ${(below - 0.1).toFixed(1)} pCi/L`;
}

/** Returns the title of a chart: its means and the kind of device. */
export const chartName = ({ band, device }: Pick<ControlChart, 'band' | 'device'>): string =>
  [bandName(band), device].filter(Boolean).join(', ');

export function statisticName({ of }: PrecisionBand): string {
  return of === 'percent' ? 'Difference in percent of the mean' : 'Difference in pCi/L';
}

/** Returns a limit to one decimal: "20.3%", "1 pCi/L". For display; the exact limit decides. */
export function formatLimit(value: number, { of }: PrecisionBand): string {
  return `${Math.round(value * 10) / 10}${of === 'percent' ? '%' : ' pCi/L'}`;
}

/** Returns the limits of a chart and their origin, in sentences. */
export function describeLimits({ band, points, warning, control, own }: ControlChart): string {
  const lines =
    control === null
      ? `Warning above ${formatLimit(warning, band)}; the texts give no control line here.`
      : `Warning from ${formatLimit(warning, band)}, control from ${formatLimit(control, band)}.`;
  if (band.control === null) return lines;
  const published = `${formatLimit(band.warning, band)} and ${formatLimit(band.control, band)}`;
  if (own) return `${lines} Drawn from your own ${points.length} pairs; the published lines are ${published}.`;
  if (points.length >= OWN_LIMITS_FROM.pairs) return `${lines} As published: your own pairs give no tighter ones.`;
  return `${lines} As published, until ${OWN_LIMITS_FROM.pairs} pairs of your own give tighter ones.`;
}

/** Returns the status of a chart, with what to do. */
export function chartStatus({ points, flags }: ControlChart): {
  readonly status: ChartStatus;
  readonly text: string;
} {
  if (points.length === 0) return { status: 'not-run', text: 'No pair yet.' };
  const last = lastPoints(points);
  if (last.some(({ verdict, endsRun }) => verdict === 'out-of-control' || endsRun))
    return { status: 'blocked', text: 'Out of control.' };
  if (flags.length > 0) return { status: 'tight', text: 'Look for the cause.' };
  if (last.some(({ verdict }) => verdict === 'warning')) {
    return { status: 'tight', text: 'The last pair is in warning: look for the cause.' };
  }
  return { status: 'clear', text: 'In control.' };
}

/** Returns a sentence on plans that record the same test as another plan; empty for none. */
export const describeCopies = ({ copies }: Pick<QualityBook, 'copies'>): string =>
  copies === 0
    ? ''
    : `${counted(copies, 'plan')} ${copies === 1 ? 'records a test that another plan records' : 'record tests that other plans record'} too, by serial numbers, start and results: each is counted once.`;

/** Returns "Spikes: 3% of the locations measured in a month, at most 6 a month, and at least 3 a year." */
export function describeRequirement({ name, percent, mostAMonth, leastAYear, conflict }: QcRequirement): string {
  const year = leastAYear > 0 ? `, and at least ${leastAYear} a year` : '';
  return `${name}: ${percent}% of the locations measured in a month, at most ${mostAMonth} a month${year}.${conflict && ` Texts differ: ${conflict}`}`;
}

/** What a location counts from: our reading, because a month's pairs and blanks cannot be placed once its results are in. */
export const COUNTED_FROM =
  'A location counts from when its detectors are placed, in the month of the pick-up, or of the start while there is none (our reading).';

/** Returns "2 of 3 completed, 1 outstanding" or "20 completed, 2 required". */
export function describeCount(count: QcCount): string {
  const { done, required } = count;
  return done < required
    ? `${done} of ${required} completed, ${outstanding(count)} outstanding`
    : `${done} completed, ${required} required`;
}

/** Returns the corrective action for a blank or spike; null where none is needed. */
export function correctiveAction({
  check: { kind },
  verdict,
}: CheckRecord): { readonly text: string; readonly sources: readonly Source[] } | null {
  if (verdict === 'clear') return null;
  return ACTIONS[kind][verdict];
}

type Action = NonNullable<ReturnType<typeof correctiveAction>>;

const BLANK_SOURCES = [NEW_JERSEY('10(d)'), MSQA('Companion D, 2.4.2')] as const;
const SPIKE_SOURCES = [MSQA('5.3.1-5.3.3')] as const;

const ACTIONS: Readonly<
  Record<QualityCheck['kind'], Readonly<Record<Exclude<CheckRecord['verdict'], 'clear'>, Action>>>
> = {
  blank: {
    warning: { text: 'Look for the cause and record it.', sources: BLANK_SOURCES },
    'out-of-control': {
      text: 'Above the detection limit: find the cause and correct it. Tests of that time may have to be done again.',
      sources: BLANK_SOURCES,
    },
    unknown: {
      text: "Enter the laboratory's detection limit: without it this cannot be evaluated.",
      sources: BLANK_SOURCES,
    },
  },
  spike: {
    warning: { text: 'More than 20% off: look for the cause with the laboratory.', sources: SPIKE_SOURCES },
    'out-of-control': {
      text: 'More than 30% off: find the cause with the laboratory and correct it before you go on.',
      sources: SPIKE_SOURCES,
    },
    unknown: {
      text: 'Enter what the spike was exposed to: without it this cannot be evaluated.',
      sources: SPIKE_SOURCES,
    },
  },
};
