import type { Source } from '../../../geometry/rules/types.ts';
import { MAH, source } from '../sources.ts';
import { atLeast, compare, type Exact, exactOf, rounded } from './exact.ts';
import { inPicocuries } from './radon.ts';

/** A level that an authority holds a home against. Each is judged in the unit in which it was published. */
export interface ActionLevel {
  readonly id: string;
  readonly authority: string;
  readonly value: number;
  readonly unit: 'pCi/L' | 'Bq/m3';
  /** Whether the text counts from the level on, or what exceeds it only. */
  readonly counts: 'from' | 'above';
  /** What the authority asks for then. */
  readonly action: string;
  /** What is held against it: the text names a yearly mean, or the result of the test. */
  readonly of: 'test' | 'year';
  readonly source: Source;
}

/** The level of the United States: the one that decides what comes next here. */
export const US_ACTION_LEVEL = 4;
/** From here to the action level, pCi/L, a home is worth a thought: ANSI/AARST MAH-2019, 7.1. */
export const US_CONSIDER_LEVEL = 2;

/** A table of national levels in a journal: what the authorities themselves publish was not read. */
const NATIONAL_LEVELS = source('secondary', 'Eur Respir J 2017;50:1701609, table of national levels');
/** Asks for less where the mean exceeds 200 Bq/m3. */
export const CANADA_GUIDE = source('primary', 'Health Canada, guide for radon measurements in homes');

/** The higher levels first. "From" is the strict reading, where it is not known that a text says "exceeds". */
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

/** The level in pCi/L, exactly. */
export const levelInPicocuries = ({ value, unit }: ActionLevel): Exact => inPicocuries({ value, unit });

/** Whether a result, pCi/L, is as much as the level asks something for. Exact: 148 Bq/m3 is 4 pCi/L, and the printed 150 is not. */
export function reaches(result: Exact, level: ActionLevel): boolean {
  const apart = compare(result, levelInPicocuries(level));
  return level.counts === 'from' ? apart >= 0 : apart > 0;
}

/**
 * The same of an exact mean, pCi/L. Levels in pCi/L are for results as reported, at one decimal (ANSI/AARST MAH-2019, 8.5.2(b)); no text
 * rounds so in Bq/m3, where 101 Bq/m3 would read 2.7 pCi/L and fall below 100.
 */
export const meanReaches = (mean: Exact, level: ActionLevel): boolean =>
  reaches(level.unit === 'pCi/L' ? rounded(mean, 1) : mean, level);

/** Whether a result as reported is at or above so many pCi/L. */
export const isAtLeast = (result: Exact, picocuries: number): boolean => atLeast(result, exactOf(picocuries));
