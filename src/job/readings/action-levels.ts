import type { Source } from '../../../geometry/rules/types.ts';
import { MAH, source } from '../sources.ts';
import { atLeast, type Exact, exactOf } from './exact.ts';
import { inPicocuries } from './radon.ts';

/** A level that an authority holds a home against. Each is judged in the unit in which it was published. */
export interface ActionLevel {
  readonly id: string;
  readonly authority: string;
  readonly value: number;
  readonly unit: 'pCi/L' | 'Bq/m3';
  /** What the authority asks for at or above it. */
  readonly asks: string;
  /** What is held against it: the text names a yearly mean, or the result of the test. */
  readonly of: 'test' | 'year';
  readonly source: Source;
}

/** The level of the United States: the one that decides what comes next here. */
export const US_ACTION_LEVEL = 4;
/** From here to the action level, pCi/L, a home is worth a thought: ANSI/AARST MAH-2019, 7.1. */
export const US_CONSIDER_LEVEL = 2;

/** The higher levels first. */
export const ACTION_LEVELS: readonly ActionLevel[] = [
  {
    id: 'eu',
    authority: 'European Union, upper end for national levels',
    value: 300,
    unit: 'Bq/m3',
    asks: 'reduce',
    of: 'year',
    source: source('primary', 'Directive 2013/59/Euratom, Art. 74'),
  },
  {
    id: 'who-most',
    authority: 'World Health Organization, where 100 cannot be reached',
    value: 300,
    unit: 'Bq/m3',
    asks: 'reduce',
    of: 'year',
    source: source('memory', 'WHO Handbook on Indoor Radon, 2009'),
  },
  {
    id: 'canada',
    authority: 'Canada',
    value: 200,
    unit: 'Bq/m3',
    asks: 'reduce',
    of: 'year',
    source: source('primary', 'Health Canada guideline; Eur Respir J 2017;50:1701609, table'),
  },
  {
    id: 'uk',
    authority: 'United Kingdom, action',
    value: 200,
    unit: 'Bq/m3',
    asks: 'reduce',
    of: 'year',
    source: source('primary', 'Eur Respir J 2017;50:1701609, table'),
  },
  {
    id: 'ireland',
    authority: 'Ireland',
    value: 200,
    unit: 'Bq/m3',
    asks: 'reduce',
    of: 'year',
    source: source('primary', 'Eur Respir J 2017;50:1701609, table'),
  },
  {
    id: 'us',
    authority: 'United States',
    value: US_ACTION_LEVEL,
    unit: 'pCi/L',
    asks: 'fix the home',
    of: 'test',
    source: MAH('7.1'),
  },
  {
    id: 'who',
    authority: 'World Health Organization',
    value: 100,
    unit: 'Bq/m3',
    asks: 'reduce',
    of: 'year',
    source: source('memory', 'WHO Handbook on Indoor Radon, 2009'),
  },
  {
    id: 'uk-target',
    authority: 'United Kingdom, target',
    value: 100,
    unit: 'Bq/m3',
    asks: 'aim below',
    of: 'year',
    source: source('primary', 'Eur Respir J 2017;50:1701609, table'),
  },
  {
    id: 'us-consider',
    authority: 'United States, consider fixing',
    value: US_CONSIDER_LEVEL,
    unit: 'pCi/L',
    asks: 'consider fixing',
    of: 'test',
    source: MAH('7.1'),
  },
];

/** The level in pCi/L, exactly. */
export const levelInPicocuries = ({ value, unit }: ActionLevel): Exact => inPicocuries({ value, unit });

/** Whether a result, pCi/L as reported, reaches the level. Exact: 148 Bq/m3 is 4 pCi/L, and the printed 150 is not. */
export const reaches = (result: Exact, level: ActionLevel): boolean => atLeast(result, levelInPicocuries(level));

/** Whether a result as reported is at or above so many pCi/L. */
export const isAtLeast = (result: Exact, picocuries: number): boolean => atLeast(result, exactOf(picocuries));
