import type { Source } from '../../../geometry/rules/types.ts';
import { MAH, source } from '../sources.ts';
import { atLeast, compare, type Exact, exactOf, rounded } from './exact.ts';
import { inPicocuries } from './radon.ts';

/** A published action or reference level. Each is compared in the unit in which it was published. */
export interface ActionLevel {
  readonly id: string;
  readonly authority: string;
  readonly value: number;
  readonly unit: 'pCi/L' | 'Bq/m3';
  /** "from": results at or above the level count; "above": only results above it. */
  readonly counts: 'from' | 'above';
  /** Recommendation of the authority for a result that counts. */
  readonly action: string;
  /** The compared quantity: the annual mean, or the result of the test. */
  readonly of: 'test' | 'year';
  readonly source: Source;
}

/** Action level of the United States, pCi/L: it decides the next step of a short-term test. */
export const US_ACTION_LEVEL = 4;
/** From this level to the action level, pCi/L, mitigation is to be considered: ANSI/AARST MAH-2019, 7.1. */
export const US_CONSIDER_LEVEL = 2;

/** A table of national levels in a journal; the publications of the authorities were not read. */
const NATIONAL_LEVELS = source('secondary', 'Eur Respir J 2017;50:1701609, table of national levels');
/** Recommends reduction where the mean exceeds 200 Bq/m3. */
export const CANADA_GUIDE = source('primary', 'Health Canada, guide for radon measurements in homes');

/** Highest level first. "from" is the strict reading, used if a text is not known to say "exceeds". */
export const ACTION_LEVELS: readonly ActionLevel[] = [
  {
    id: 'eu',
    authority: 'European Union, upper end for national levels',
    value: 300,
    unit: 'Bq/m3',
    counts: 'above',
    action: 'reduce',
    of: 'year',
    source: source('primary', 'Directive 2013/59/Euratom, Art. 74'),
  },
  {
    id: 'who-most',
    authority: 'World Health Organization, where 100 cannot be reached',
    value: 300,
    unit: 'Bq/m3',
    counts: 'above',
    action: 'reduce',
    of: 'year',
    source: source('memory', 'WHO Handbook on Indoor Radon, 2009'),
  },
  {
    id: 'canada',
    authority: 'Canada',
    value: 200,
    unit: 'Bq/m3',
    counts: 'above',
    action: 'reduce',
    of: 'year',
    source: CANADA_GUIDE,
  },
  {
    id: 'uk',
    authority: 'United Kingdom, action',
    value: 200,
    unit: 'Bq/m3',
    counts: 'from',
    action: 'reduce',
    of: 'year',
    source: NATIONAL_LEVELS,
  },
  {
    id: 'ireland',
    authority: 'Ireland',
    value: 200,
    unit: 'Bq/m3',
    counts: 'from',
    action: 'reduce',
    of: 'year',
    source: NATIONAL_LEVELS,
  },
  {
    id: 'us',
    authority: 'United States',
    value: US_ACTION_LEVEL,
    unit: 'pCi/L',
    counts: 'from',
    action: 'fix the home',
    of: 'test',
    source: MAH('7.1'),
  },
  {
    id: 'who',
    authority: 'World Health Organization',
    value: 100,
    unit: 'Bq/m3',
    counts: 'from',
    action: 'reduce',
    of: 'year',
    source: source('memory', 'WHO Handbook on Indoor Radon, 2009'),
  },
  {
    id: 'uk-target',
    authority: 'United Kingdom, target',
    value: 100,
    unit: 'Bq/m3',
    counts: 'from',
    action: 'aim below',
    of: 'year',
    source: NATIONAL_LEVELS,
  },
  {
    id: 'us-consider',
    authority: 'United States, consider fixing',
    value: US_CONSIDER_LEVEL,
    unit: 'pCi/L',
    counts: 'from',
    action: 'consider fixing',
    of: 'test',
    source: MAH('7.1'),
  },
];

/** Returns the level in pCi/L, exactly. */
export const levelInPicocuries = ({ value, unit }: ActionLevel): Exact => inPicocuries({ value, unit });

/** Returns whether a result, pCi/L, reaches the level. Exact: 148 Bq/m3 is 4 pCi/L, the often printed 150 is not. */
export function reaches(result: Exact, level: ActionLevel): boolean {
  const apart = compare(result, levelInPicocuries(level));
  return level.counts === 'from' ? apart >= 0 : apart > 0;
}

/**
 * Returns whether an exact mean, pCi/L, reaches the level. Levels in pCi/L apply to results as reported, at one decimal (ANSI/AARST
 * MAH-2019, 8.5.2(b)). Levels in Bq/m3 apply unrounded: 101 Bq/m3 would round to 2.7 pCi/L, which is below 100 Bq/m3.
 */
export const meanReaches = (mean: Exact, level: ActionLevel): boolean =>
  reaches(level.unit === 'pCi/L' ? rounded(mean, 1) : mean, level);

/** Returns whether a result as reported, pCi/L, is at or above `picocuries`. */
export const isAtLeast = (result: Exact, picocuries: number): boolean => atLeast(result, exactOf(picocuries));
