import { assert } from '../plane/assert.ts';
import { LIMIT_TOLERANCE } from '../plane/tolerances.ts';
import type { Mm } from '../plane/types.ts';
import { type LengthUnit, SQUARE_FOOT } from './constants.ts';

/**
 * Direction of rounding, by value, below zero too. Measured lengths are rounded down and required ones up, to be safe.
 */
export type Rounding = 'nearest' | 'down' | 'up';

/**
 * A value this close to a whole step counts as that step, in steps (about 3e-6 mm): 914.4 mm is 287.99999999999994
 * eighths in floating point, and must not be rounded down to 2 ft 11 7/8 in.
 */
const STEP_NOISE = 1e-6;
const STEP: Readonly<Record<LengthUnit, Mm>> = { 'feet-inches': 25.4 / 8, metric: 5 };

/** Which limit a length is compared with: a minimum or a maximum. */
export type Bound = 'least' | 'most';

/**
 * Formats a measured length, rounded to the safe side: down against a minimum, up against a maximum. The one format for
 * distances, positions, heights and wall faces, so that one distance always reads the same. A length within the tolerance of
 * limits of a step is shown as that step: a length that meets its limit never reads as short of it.
 */
export function formatMeasured(mm: Mm, unit: LengthUnit, bound: Bound = 'least'): string {
  return bound === 'least'
    ? formatLength(mm + LIMIT_TOLERANCE, unit, 'down')
    : formatLength(mm - LIMIT_TOLERANCE, unit, 'up');
}

/**
 * Formats a required length, rounded to the safe side: up for a minimum, down for a maximum. The one format for limits.
 */
export function formatRequired(mm: Mm, unit: LengthUnit, bound: Bound = 'least'): string {
  return formatLength(mm, unit, bound === 'least' ? 'up' : 'down');
}

/**
 * Formats a length to 1/8 in ("5 ft 2 1/2 in", "4 in", "7 ft") or 5 mm ("2.13 m", "2.135 m", "35 cm").
 * Zero is "0 in" or "0 cm"; a negative length has a minus sign. The length must be finite. For sizes and deviations;
 * see `formatMeasured` and `formatRequired` for distances and limits.
 */
export function formatLength(mm: Mm, unit: LengthUnit, round: Rounding = 'nearest'): string {
  assert(Number.isFinite(mm), `a length to be shown is finite, got ${mm}`);
  const steps = wholeSteps(mm / STEP[unit], round);
  const words = unit === 'metric' ? metricWords(Math.abs(steps) * 5) : inchWords(Math.abs(steps), 8);
  return steps < 0 ? `-${words}` : words;
}

/**
 * Formats a typed length back to the person, to 1/64 in or 1 mm. A finer value is rounded and marked: "about 5 ft 2 1/2
 * in".
 */
export function echoLength(mm: Mm, unit: LengthUnit): string {
  const fine = Math.abs(mm) / (unit === 'metric' ? 1 : 25.4 / 64);
  const steps = Math.round(fine);
  const sign = mm < 0 && steps > 0 ? '-' : '';
  if (Math.abs(fine - steps) > STEP_NOISE) return `about ${formatLength(mm, unit)}`;
  return sign + (unit === 'metric' ? metricWords(steps) : inchWords(steps, 64));
}

/**
 * Formats a length for an input field: exact where a tape has a mark for it, else rounded and marked: "≈ 5 ft 2 3/8
 * in".
 *
 * @param rounded the format of an inexact length, for example `formatRequired`
 */
export function fieldLength(
  mm: Mm,
  unit: LengthUnit,
  rounded: (mm: Mm, unit: LengthUnit) => string = formatMeasured,
): string {
  const exact = echoLength(mm, unit);
  return exact.startsWith('about ') ? `≈ ${rounded(mm, unit)}` : exact;
}

/**
 * Formats a floor area: "215 sq ft", with a tenth below 100 ("42.5 sq ft"); "19.97 m²". Takes mm², finite, 0 or more.
 */
export function formatArea(areaMm2: number, unit: LengthUnit): string {
  assert(Number.isFinite(areaMm2) && areaMm2 >= 0, `an area is 0 or more, got ${areaMm2}`);
  if (unit === 'metric') return `${(areaMm2 / 1e6).toFixed(2)} m²`;
  const feet = areaMm2 / SQUARE_FOOT;
  const tenths = Math.round(feet * 10) / 10;
  return `${tenths < 100 ? tenths : Math.round(feet)} sq ft`;
}

function wholeSteps(exact: number, round: Rounding): number {
  const nearest = Math.round(exact);
  if (round === 'nearest' || Math.abs(exact - nearest) <= STEP_NOISE) return nearest;
  return round === 'down' ? Math.floor(exact) : Math.ceil(exact);
}

/** Formats `parts`, a whole number of 1/`per` inches, 0 or more. */
function inchWords(parts: number, per: number): string {
  const feet = Math.floor(parts / (12 * per));
  const inches = Math.floor(parts / per) - feet * 12;
  const fraction = fractionWords(parts % per, per);
  const words = [];
  if (feet > 0) words.push(`${feet} ft`);
  const mixed = [inches > 0 ? `${inches}` : '', fraction].filter(Boolean).join(' ');
  if (mixed !== '') words.push(`${mixed} in`);
  return words.join(' ') || '0 in';
}

/** Returns the reduced fraction: "1/2" for 4 of 8; "" for 0. `per` is a power of two. */
function fractionWords(parts: number, per: number): string {
  if (parts === 0) return '';
  let [over, under] = [parts, per];
  while (over % 2 === 0) [over, under] = [over / 2, under / 2];
  return `${over}/${under}`;
}

/** Formats whole mm: below 1 m as cm, from 1 m on as m with two decimals, three when needed. */
function metricWords(mm: number): string {
  if (mm < 1000) return `${Math.floor(mm / 10)}${mm % 10 === 0 ? '' : `.${mm % 10}`} cm`;
  const digits = String(mm % 1000).padStart(3, '0');
  return `${Math.floor(mm / 1000)}.${digits.endsWith('0') ? digits.slice(0, 2) : digits} m`;
}
