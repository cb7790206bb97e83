import type { Source } from '../../../geometry/rules/types.ts';
import { ILLINOIS, ILLINOIS_COPY, MAH, MALB, ourReading, PENNSYLVANIA, source } from '../sources.ts';
import { HOUR, type Ms } from './clock.ts';

/** The published times of a short-term test, one definition for checks, pictures, words and calendar. */
export interface TimeLimit {
  readonly duration: Ms;
  readonly sources: readonly Source[];
}

/** The house is closed for so long before a test of less than `SHORT_TEST`. */
export const CLOSED_BEFORE: TimeLimit = {
  duration: 12 * HOUR,
  sources: [MAH('Exh. 2 and 4'), MALB('4.1'), PENNSYLVANIA('(a)(4)(iv)'), ILLINOIS_COPY(' (at least 12 h)')],
};

/** A test shorter than this needs the lead time; one that runs so long in a closed house needs none. */
export const SHORT_TEST: TimeLimit = { duration: 96 * HOUR, sources: [MAH('6.1.2')] };

const SYSTEM_RUNS = 24 * HOUR;

/** A mitigation system runs for so long before any test: the clause of MAH-2019 speaks of the test that follows mitigation. */
export const MITIGATION_BEFORE: TimeLimit = {
  duration: SYSTEM_RUNS,
  sources: [
    source('secondary', 'EPA checklist for home buyers'),
    ourReading('ANSI/AARST MAH-2019, 7.3.2, written for the test after mitigation, for any test'),
  ],
};

/** And before the test that shows whether mitigation has worked. */
export const MITIGATION_BEFORE_ITS_TEST: TimeLimit = { duration: SYSTEM_RUNS, sources: [MAH('7.3.2')] };

/** After mitigation the test is done within so long of the start of the system. */
export const AFTER_MITIGATION_WITHIN: TimeLimit = {
  duration: 30 * 24 * HOUR,
  sources: [source('memory', 'EPA 402-R-93-078')],
};

/** The least of a term, with what a test of that term is called. */
export interface TermLimit extends TimeLimit {
  readonly name: string;
}

/** No short-term test of any kind is shorter. */
export const LEAST_EXPOSURE: TermLimit = {
  name: 'a short-term test',
  duration: 48 * HOUR,
  sources: [ILLINOIS('(b)(1)'), PENNSYLVANIA('(a)(4)(ii)')],
};

/** No long-term test is shorter. */
export const LEAST_LONG_EXPOSURE: TermLimit = {
  name: 'a long-term test',
  duration: 91 * 24 * HOUR,
  sources: [source('secondary', 'Health Canada, radon measurements in homes: at least 91 days')],
};

/** A continuous monitor may leave the hours before the lead time out: so many must be left in one run. */
export const MONITOR_HOURS: TimeLimit = { duration: 46 * HOUR, sources: [MAH('6.1.2(c)')] };

/** Sustained wind from here, km/h, is no weather for a test of less than `SHORT_TEST`. 30 mph, which the text gives as 48 km/h. */
export const WIND_LIMIT = { kmh: 48, sources: [ILLINOIS_COPY('(b)(1)(D)')] } as const;

/** What counts as a severe storm there. The weather service has since raised the hail to 1 in. */
export const SEVERE_STORM = {
  words: 'Gusts of 58 mph (93 km/h), or hail of 3/4 in (19 mm).',
  sources: [source('secondary', 'the agency note on 32 Ill. Adm. Code 422.130, for what a severe storm is')],
} as const;

/** What the post is reckoned to take to the laboratory. Laboratories set their own limits in days; none is published. */
export const POST_TAKES: TimeLimit = {
  duration: 48 * HOUR,
  sources: [source('common-practice', 'common practice, no published source')],
};
