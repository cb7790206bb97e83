import { severalLines } from '../../geometry/messages/plain-text.ts';

/** Returns rows as CSV (RFC 4180). */
export function csv(rows: readonly (readonly (string | number)[])[]): string {
  return rows.map((row) => `${row.map(field).join(',')}\r\n`).join('');
}

/** Signs with which a spreadsheet begins a formula, also after spaces, and their full-width forms. */
const FORMULA = /^[\s\u3000]*[=+\-@\uff1d\uff0b\uff0d\uff20]|^[\t\r]/;
const NUMBER = /^-?\d+(?:\.\d+)?$/;

function field(value: string | number): string {
  const text = severalLines(String(value));
  // A spreadsheet would read such a text as a formula; a negative number stays a number.
  const plain = typeof value === 'string' && FORMULA.test(text) && !NUMBER.test(text) ? `'${text}` : text;
  return /[",\r\n]/.test(plain) ? `"${plain.replaceAll('"', '""')}"` : plain;
}
