import type { Source } from '../../../geometry/rules/types.ts';
import { MAMF, MSQA, NEW_JERSEY, ourReading, source } from '../sources.ts';

/** A requirement of a quality assurance program: a share of the measurements of a month, with a cap. */
export interface QcRequirement {
  readonly name: string;
  /** Share of the measurements of a month, percent. */
  readonly percent: number;
  /** Monthly cap. */
  readonly mostAMonth: number;
  /** Annual minimum; 0 where no text gives one. */
  readonly leastAYear: number;
  readonly sources: readonly Source[];
  /** A text that requires something else, or a difference in how the book counts; empty if none is known. */
  readonly conflict: string;
}

export const DUPLICATES: QcRequirement = {
  name: 'Collocated pairs (side by side)',
  percent: 10,
  mostAMonth: 50,
  leastAYear: 0,
  sources: [NEW_JERSEY('10(c)')],
  conflict: '',
};

export const BLANKS: QcRequirement = {
  name: 'Field blanks',
  percent: 5,
  mostAMonth: 25,
  leastAYear: 0,
  sources: [NEW_JERSEY('10(d)'), MSQA('Companion D, 2.4.2'), source('primary', 'Illinois Register 33 (2009), p. 6844')],
  conflict: '',
};

export const SPIKES: QcRequirement = {
  name: 'Spikes',
  percent: 3,
  mostAMonth: 6,
  leastAYear: 3,
  sources: [MSQA('5.3.1-5.3.3'), MAMF('2.8.4 (each lot)'), ourReading('the share of the locations of a month')],
  conflict:
    'ANSI/AARST MAMF-2017 with 1/21 revisions, 2.8.4, asks for 3% of each lot. The book counts by month and kind of device, not by lot: check the 3% of every lot yourself.',
};

/** Returns the required number for a month: the share, rounded up, at most the cap. */
export function requiredInMonth({ percent, mostAMonth }: QcRequirement, measurements: number): number {
  return Math.min(mostAMonth, Math.ceil((measurements * percent) / 100));
}

/** Limits of a spike's relative percent error, in both directions: ANSI/AARST MS-QA-2019, 5.3. */
export const SPIKE_LIMITS = { warning: 20, control: 30, sources: [MSQA('5.3.3')] } as const;

/** Shares of pairs, percent, beyond the warning and control limits that call for an investigation: N.J.A.C. 7:28-27.10(c). */
export const SHARE_LIMITS = { warning: 5, control: 1, sources: [NEW_JERSEY('10(c)')] } as const;

/** Number of own pairs from which own limits may replace the published ones: MS-QA-2019, 7.9.1, which is for laboratories. Never looser: 3.5. */
export const OWN_LIMITS_FROM = {
  pairs: 20,
  sources: [
    ourReading('ANSI/AARST MS-QA-2019, 7.9.1, written for laboratories, for one who places detectors'),
    MSQA('3.5'),
  ],
} as const;

/** Run rule: two consecutive warnings are out of control. EPA 402-R-92-003, App. B.3, from memory. */
export const RUN_OF_WARNINGS = { length: 2, sources: [source('memory', 'EPA 402-R-92-003, App. B.3')] } as const;
