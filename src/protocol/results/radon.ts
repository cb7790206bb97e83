import type { RadonUnit, RadonValue } from '../../../geometry/plan/test-record.ts';
import { compare, decimalText, dividedBy, type Exact, exact, exactOf, rounded, times } from './exact.ts';

/** Bq/m3 per pCi/L, exactly: the curie is 3.7e10 decays per second, a liter is 0.001 m3. */
const BECQUERELS_PER_PICOCURIE = exact(37n);

/** Returns a reported concentration in pCi/L, exactly. */
export function inPicocuries({ value, unit }: RadonValue): Exact {
  return unit === 'pCi/L' ? exactOf(value) : dividedBy(exactOf(value), BECQUERELS_PER_PICOCURIE);
}

/** Converts pCi/L to Bq/m3, exactly. */
export const inBecquerels = (picocuries: Exact): Exact => times(picocuries, BECQUERELS_PER_PICOCURIE);

/** Returns a concentration, pCi/L, as reported: "4.0 pCi/L" at one decimal (ANSI/AARST MAH-2019, 8.5.2(b)), "148 Bq/m³" whole. */
export function radonText(picocuries: Exact, unit: RadonUnit): string {
  if (unit === 'pCi/L') return `${decimalText(picocuries, 1)} pCi/L`;
  return `${decimalText(inBecquerels(picocuries), 0)} Bq/m³`;
}

export const otherUnit = (unit: RadonUnit): RadonUnit => (unit === 'pCi/L' ? 'Bq/m3' : 'pCi/L');

/** Returns a concentration, pCi/L, as reported in both units, `unit` first. */
export function radonInBothUnits(picocuries: Exact, unit: RadonUnit): string {
  return `${radonText(picocuries, unit)} (${radonText(picocuries, otherUnit(unit))})`;
}

/** Returns the digits of a value as the laboratory reported it; pCi/L with one decimal at least: "3.95", "3.0". */
export const digitsText = ({ value, unit }: RadonValue): string => withDecimal(String(value), unit);

/** Returns a value as the laboratory reported it, with its unit: "3.95 pCi/L", "3.0 pCi/L". */
export const enteredText = (entered: RadonValue): string => `${digitsText(entered)} ${unitText(entered.unit)}`;

/** ANSI/AARST MAH-2019, 8.5.2(b): pCi/L are reported with one decimal. Further decimals are kept. */
const withDecimal = (digits: string, unit: RadonUnit): string =>
  unit === 'pCi/L' && /^\d+$/.test(digits) ? `${digits}.0` : digits;

export const unitText = (unit: RadonUnit): string => (unit === 'Bq/m3' ? 'Bq/m³' : unit);

/** Returns an entered value in the other unit, with at most two decimals: "146.15 Bq/m³", or "about 4.05 pCi/L" if it is rounded. */
export function otherUnitText(entered: RadonValue): string {
  const picocuries = inPicocuries(entered);
  const unit = otherUnit(entered.unit);
  const value = unit === 'pCi/L' ? picocuries : inBecquerels(picocuries);
  const digits = withDecimal(decimalText(value, 2).replace(/\.?0+$/, ''), unit);
  const about = compare(rounded(value, 2), value) === 0 ? '' : 'about ';
  return `${about}${digits} ${unitText(unit)}`;
}

/**
 * Returns a sentence with each amount in pCi/L also in `unit`: "at 148 Bq/m³ (4 pCi/L) or above". The published figure is kept.
 */
export function amountsInUnit(unit: RadonUnit, sentence: string): string {
  if (unit === 'pCi/L') return sentence;
  return sentence.replaceAll(/(\d+(?:\.\d+)?) pCi\/L/g, (published, picocuries: string) => {
    return `${radonText(exactOf(Number(picocuries)), unit)} (${published})`;
  });
}
