import type { RadonUnit, RadonValue } from '../../../geometry/plan/model.ts';
import { decimalText, dividedBy, type Exact, exact, exactOf, times } from './exact.ts';

/** Bq/m3 in one pCi/L, exactly: the curie is 3.7e10 decays a second, a litre a thousandth of a cubic metre. */
const BECQUERELS_PER_PICOCURIE = exact(37n);

/** A reported concentration in pCi/L, exactly. */
export function inPicocuries({ value, unit }: RadonValue): Exact {
  return unit === 'pCi/L' ? exactOf(value) : dividedBy(exactOf(value), BECQUERELS_PER_PICOCURIE);
}

/** From pCi/L to Bq/m3, exactly. */
export const inBecquerels = (picocuries: Exact): Exact => times(picocuries, BECQUERELS_PER_PICOCURIE);

/** As it is reported: "4.0 pCi/L" with one decimal (ANSI/AARST MAH-2019, 8.5.2(b)), "148 Bq/m³" whole. `picocuries` is in pCi/L. */
export function radonText(picocuries: Exact, unit: RadonUnit): string {
  if (unit === 'pCi/L') return `${decimalText(picocuries, 1)} pCi/L`;
  return `${decimalText(inBecquerels(picocuries), 0)} Bq/m³`;
}

/** In both units, the one that the plan shows first. */
export function radonBoth(picocuries: Exact, unit: RadonUnit): string {
  const other = unit === 'pCi/L' ? 'Bq/m3' : 'pCi/L';
  return `${radonText(picocuries, unit)} (${radonText(picocuries, other)})`;
}
