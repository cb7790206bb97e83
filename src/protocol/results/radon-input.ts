import type { RadonUnit, RadonValue } from '../../../geometry/plan/test-record.ts';
import { compare, exactOf } from './exact.ts';
import { inPicocuries } from './radon.ts';

/** A result as a person typed it. */
export interface EnteredRadon extends RadonValue {
  /** Typed with "<": below the laboratory's detection limit, which is the value. */
  readonly belowLimit: boolean;
}

export type ParsedRadon =
  | { readonly ok: true; readonly entered: EnteredRadon | null }
  | { readonly ok: false; readonly message: string };

/** Largest number accepted: the highest concentration ever measured indoors is far below, so a larger number is an error of point or unit. */
const MOST = 1e6;
/** pCi/L (37,000 Bq/m3). Above it an error of decimal point or unit is likelier than such a home: common practice, no published source. */
const LIKELY_SLIP = exactOf(1000);

/** Returns whether a result is so high that a typing error is likely: it is accepted, with a remark. */
export const isLikelySlip = (entered: RadonValue): boolean => compare(inPicocuries(entered), LIKELY_SLIP) > 0;

const FORM = /^(<)?\s*(\d+(?:[.,]\d*)?|[.,]\d+)\s*(?:(pci\s*\/\s*l)|(bq\s*\/\s*m(?:3|\^3|³)))?$/i;

/** Parses "3.9", "3,9", "< 0.4", "150 Bq/m3". A number without a unit is in `unit`; empty text is null; else an error message. */
export function parseRadon(text: string, unit: RadonUnit): ParsedRadon {
  const plain = text.trim();
  if (plain === '') return { ok: true, entered: null };
  // A comma before three digits may separate thousands: 1,234 Bq/m3 read as 1.234 would be a wrong pass.
  if (/,\d{3}(?!\d)/.test(plain)) {
    return { ok: false, message: `"${plain}" can be read in two ways. Write it without the comma, or with a point.` };
  }
  const match = FORM.exec(plain);
  if (!match) {
    return { ok: false, message: `"${plain}" is not a result. Write it as the report has it, like 3.9 or < 0.4.` };
  }
  const [, below, digits = '', picocuries, becquerels] = match;
  const value = Number(digits.replace(',', '.'));
  if (value > MOST) return { ok: false, message: `${plain} is too much. Check the decimal point and the unit.` };
  const written: RadonUnit = picocuries ? 'pCi/L' : 'Bq/m3';
  return {
    ok: true,
    entered: { value, unit: picocuries || becquerels ? written : unit, belowLimit: below !== undefined },
  };
}
