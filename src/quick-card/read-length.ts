import type { Mm } from '../../geometry/plan/model.ts';
import { FOOT, type LengthUnit, parseLength } from '../../geometry/units/index.ts';

/** Accepted lengths and heights of a room, mm, both ends included. Common practice, no published source. */
const RANGE: Readonly<Record<LengthUnit, { readonly least: Mm; readonly most: Mm; readonly words: string }>> = {
  'feet-inches': { least: 25.4, most: 328 * FOOT, words: 'from 1 in to 328 ft' },
  metric: { least: 10, most: 100_000, words: 'from 1 cm to 100 m' },
};

export type ReadLength = { readonly ok: true; readonly mm: Mm } | { readonly ok: false; readonly message: string };

/** Parses a typed length, mm; else returns an error message with the range in the unit of the tape. Never throws. */
export function readLength(text: string, unit: LengthUnit): ReadLength {
  const length = parseLength(text, unit, { negative: true });
  const { least, most, words } = RANGE[unit];
  if (!length.ok) return { ok: false, message: `${length.message} It has to be ${words}.` };
  if (length.mm >= least && length.mm <= most) return { ok: true, mm: length.mm };
  const wrong = length.mm < least ? 'short' : 'long';
  return { ok: false, message: `"${text.trim()}" is too ${wrong}. Write a length ${words}.` };
}
