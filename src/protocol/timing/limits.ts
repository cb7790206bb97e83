import type { Source } from '../../../geometry/rules/types.ts';
import { ILLINOIS_COPY, ILLINOIS_RULES, MAH, MALB, ourReading, PENNSYLVANIA_RULES, source } from '../sources.ts';
import { HOUR, type Ms } from './clock.ts';

/** A published time limit: the one definition for checks, charts, texts and calendar. */
export interface TimeLimit {
  readonly duration: Ms;
  readonly sources: readonly Source[];
}

/** Returns the duration of a limit as text: "12 h". */
export const limitWords = ({ duration }: TimeLimit): string => `${duration / HOUR} h`;

/** Closed-building conditions before a test of less than `SHORT_TEST`. */
export const CLOSED_BEFORE: TimeLimit = {
  duration: 12 * HOUR,
  sources: [MAH('Exh. 2 and 4'), MALB('4.1'), PENNSYLVANIA_RULES('(a)(4)(iv)'), ILLINOIS_COPY(' (at least 12 h)')],
};

/** A test shorter than this needs closed-building conditions before the start; another short-term test needs them only while it runs. */
export const SHORT_TEST: TimeLimit = { duration: 96 * HOUR, sources: [MAH('6.1.2')] };

/** The longest test to which closed-building conditions apply. */
export const MOST_CLOSED: TimeLimit = { duration: 90 * 24 * HOUR, sources: [MALB('4.1(b)')] };

const SYSTEM_RUNS = 24 * HOUR;

/** Running time of a mitigation system before any test: the clause of MAH-2019 is about the test after mitigation. */
export const MITIGATION_BEFORE: TimeLimit = {
  duration: SYSTEM_RUNS,
  sources: [
    source('secondary', 'EPA checklist for home buyers'),
    ourReading('ANSI/AARST MAH-2019, 7.3.2, written for the test after mitigation, for any test'),
  ],
};

/** Running time of a mitigation system before the test after mitigation. */
export const MITIGATION_BEFORE_ITS_TEST: TimeLimit = { duration: SYSTEM_RUNS, sources: [MAH('7.3.2')] };

/** Longest time between the activation of a system and the test after mitigation. */
export const AFTER_MITIGATION_WITHIN: TimeLimit = {
  duration: 30 * 24 * HOUR,
  sources: [source('memory', 'EPA 402-R-93-078')],
};

/** The minimum exposure of a term, with the name of such a test. */
export interface TermLimit extends TimeLimit {
  readonly name: string;
}

/** Minimum exposure of any short-term test. */
export const LEAST_EXPOSURE: TermLimit = {
  name: 'a short-term test',
  duration: 48 * HOUR,
  sources: [ILLINOIS_RULES('(b)(1)'), PENNSYLVANIA_RULES('(a)(4)(ii)')],
};

/** Maximum exposure of any short-term test: a longer one is a long-term test, which has other lists and steps. */
export const MOST_EXPOSURE: TimeLimit = { duration: 90 * 24 * HOUR, sources: LEAST_EXPOSURE.sources };

/** Minimum exposure of a long-term test. */
export const LEAST_LONG_EXPOSURE: TermLimit = {
  name: 'a long-term test',
  duration: 91 * 24 * HOUR,
  sources: [source('secondary', 'Health Canada, radon measurements in homes: at least 91 days')],
};

/** A continuous monitor may leave out its first hours: this many consecutive hours must remain. */
export const MONITOR_HOURS: TimeLimit = { duration: 46 * HOUR, sources: [MAH('6.1.2(c)')] };

/** Sustained wind from which no test of less than `SHORT_TEST` is done: 30 mph, which the text gives as 48 km/h. */
export const WIND_LIMIT = {
  mph: 30,
  kmh: 48,
  words: '30 mph (48 km/h)',
  sources: [ILLINOIS_COPY('(b)(1)(D)')],
} as const;

/** Definition of a severe storm in that text. The weather service has since raised the hail size to 1 in. */
export const SEVERE_STORM = {
  words: 'Gusts of 58 mph (93 km/h), or hail of 3/4 in (19 mm).',
  sources: [source('secondary', 'the agency note on 32 Ill. Adm. Code 422.130, for what a severe storm is')],
} as const;

/** Assumed mailing time to the laboratory. Laboratories set their own limits in days; none is published. */
export const POST_TAKES: TimeLimit = {
  duration: 48 * HOUR,
  sources: [source('common-practice', 'common practice, no published source')],
};
