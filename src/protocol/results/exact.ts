import { assert } from '../../../geometry/plane/assert.ts';

/**
 * An exact fraction. Limits are compared with the decimal figure that was reported, not with its nearest double:
 * (3.9 + 4.0) / 2 is 3.95 and rounds to 4.0, which doubles get wrong.
 */
export interface Exact {
  readonly numerator: bigint;
  /** Above zero, without a common divisor with `numerator`. */
  readonly denominator: bigint;
}

/** Returns a fraction in lowest terms. Asserts that `under` is not zero. */
export function exact(over: bigint, under = 1n): Exact {
  assert(under !== 0n, 'a fraction over zero');
  const sign = under < 0n ? -1n : 1n;
  const divisor = gcd(over < 0n ? -over : over, under * sign) || 1n;
  return { numerator: (over * sign) / divisor, denominator: (under * sign) / divisor };
}

function gcd(a: bigint, b: bigint): bigint {
  return b === 0n ? a : gcd(b, a % b);
}

/** Returns the decimal fraction that a number prints as: 3.95 is 395/100. Asserts that it is finite. */
export function exactOf(value: number): Exact {
  const match = /^(-?)(\d+)(?:\.(\d+))?(?:e([+-]\d+))?$/.exec(String(value));
  assert(match !== null, `${value} is not a number that can be recorded`);
  const [, sign = '', whole = '0', fraction = '', exponent = '0'] = match;
  const digits = BigInt(`${sign}${whole}${fraction}`);
  const power = Number(exponent) - fraction.length;
  return power >= 0 ? exact(digits * 10n ** BigInt(power)) : exact(digits, 10n ** BigInt(-power));
}

const plus = (a: Exact, b: Exact): Exact =>
  exact(a.numerator * b.denominator + b.numerator * a.denominator, a.denominator * b.denominator);
export const minus = (a: Exact, b: Exact): Exact =>
  exact(a.numerator * b.denominator - b.numerator * a.denominator, a.denominator * b.denominator);
export const times = (a: Exact, b: Exact): Exact => exact(a.numerator * b.numerator, a.denominator * b.denominator);
/** Returns a / b. Asserts that `b` is not zero. */
export const dividedBy = (a: Exact, b: Exact): Exact => exact(a.numerator * b.denominator, a.denominator * b.numerator);
export const absolute = (a: Exact): Exact => (a.numerator < 0n ? { ...a, numerator: -a.numerator } : a);

/** Returns -1, 0 or 1 as `a` is less than, equal to or greater than `b`. */
export function compare(a: Exact, b: Exact): -1 | 0 | 1 {
  const difference = a.numerator * b.denominator - b.numerator * a.denominator;
  if (difference === 0n) return 0;
  return difference < 0n ? -1 : 1;
}

export const atLeast = (a: Exact, b: Exact): boolean => compare(a, b) >= 0;

/** Returns the mean. Asserts that the list is not empty. */
export function meanOf(values: readonly Exact[]): Exact {
  const sum = values.reduce(plus, exact(0n));
  return dividedBy(sum, exact(BigInt(values.length)));
}

/**
 * Returns the value rounded to a number of decimals, halves away from zero: 3.95 to one decimal is 4.0 (ANSI/AARST MAH-2019, 8.5.2(b)).
 */
export function rounded(value: Exact, decimals: number): Exact {
  const scale = 10n ** BigInt(decimals);
  const { numerator, denominator } = absolute(value);
  const steps = (2n * numerator * scale + denominator) / (2n * denominator);
  return exact(value.numerator < 0n ? -steps : steps, scale);
}

/** Returns the text of the rounded value, "4.0". */
export function decimalText(value: Exact, decimals: number): string {
  const scale = 10n ** BigInt(decimals);
  const { numerator, denominator } = rounded(value, decimals);
  const steps = (numerator * scale) / denominator;
  const digits = (steps < 0n ? -steps : steps).toString().padStart(decimals + 1, '0');
  const sign = steps < 0n ? '-' : '';
  if (decimals === 0) return `${sign}${digits}`;
  return `${sign}${digits.slice(0, -decimals)}.${digits.slice(-decimals)}`;
}

/** Returns the nearest double: for documents and drawings, never for a comparison with a limit. */
export function asNumber(value: Exact): number {
  // Forty decimals: more digits than a double has, so that the result is the nearest double.
  return Number(decimalText(value, 40));
}
