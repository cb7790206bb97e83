import { assert } from '../plane/assert.ts';
import type { Mm } from '../plane/types.ts';
import { type LengthUnit, SQUARE_FOOT } from './constants.ts';

/** Toward caution: what was measured is rounded down, what is needed is rounded up. Both by value, also below zero. */
export type Rounding = 'nearest' | 'down' | 'up';

/**
 * A length that lies nearer than this to a whole step is that step: 914.4 mm is 287.99999999999994 eighths in floating
 * point, and must not be rounded down to 2 ft 11 7/8 in. In steps; 3 millionths of a mm, far below any tape.
 */
const STEP_NOISE = 1e-6;
const STEP: Readonly<Record<LengthUnit, Mm>> = { 'feet-inches': 25.4 / 8, metric: 5 };

/** What a length is held against: a least or a greatest one. */
export type Bound = 'least' | 'most';

/** As short of a step as a limit may be missed by is that step, mm: what meets its limit never reads as short of it. */
const MEETS: Mm = 0.1;

/**
 * A length that was measured on the plan, toward caution: rounded down where it may not be too short, up where it may not be too
 * long. The one form for a distance, a place, a height and a wall's face wherever they are said, so that one distance is one figure.
 */
export function formatMeasured(mm: Mm, unit: LengthUnit, bound: Bound = 'least'): string {
  return bound === 'least' ? formatLength(mm + MEETS, unit, 'down') : formatLength(mm - MEETS, unit, 'up');
}

/** A length that is required, toward caution: never less than the least, never more than the most. The one form for limits. */
export function formatRequired(mm: Mm, unit: LengthUnit, bound: Bound = 'least'): string {
  return formatLength(mm, unit, bound === 'least' ? 'up' : 'down');
}

/**
 * A length as said aloud on site, to 1/8 in ("5 ft 2 1/2 in", "4 in", "7 ft") or 5 mm ("2.13 m", "2.135 m", "35 cm").
 * Zero is "0 in" or "0 cm". A length below zero carries a minus sign in front. The length is finite. For sizes of things, and for
 * how far something is off; see `formatMeasured` and `formatRequired` for distances and limits.
 */
export function formatLength(mm: Mm, unit: LengthUnit, round: Rounding = 'nearest'): string {
  assert(Number.isFinite(mm), `a length to be shown is finite, got ${mm}`);
  const steps = wholeSteps(mm / STEP[unit], round);
  const words = unit === 'metric' ? metricWords(Math.abs(steps) * 5) : inchWords(Math.abs(steps), 8);
  return steps < 0 ? `-${words}` : words;
}

/**
 * The same without rounding, to answer what somebody typed: inches to 1/64, metric to 1 mm.
 * What is finer still is rounded and says so: "about 5 ft 2 1/2 in".
 */
export function echoLength(mm: Mm, unit: LengthUnit): string {
  const fine = Math.abs(mm) / (unit === 'metric' ? 1 : 25.4 / 64);
  const steps = Math.round(fine);
  const sign = mm < 0 && steps > 0 ? '-' : '';
  if (Math.abs(fine - steps) > STEP_NOISE) return `about ${formatLength(mm, unit)}`;
  return sign + (unit === 'metric' ? metricWords(steps) : inchWords(steps, 64));
}

/**
 * A length as it stands in a field: exact where a tape has a mark for it, else as it is said elsewhere: "≈ 5 ft 2 3/8 in".
 * @param says how it is said elsewhere: a required one as `formatRequired` does
 */
export function fieldLength(
  mm: Mm,
  unit: LengthUnit,
  says: (mm: Mm, unit: LengthUnit) => string = formatMeasured,
): string {
  const exact = echoLength(mm, unit);
  return exact.startsWith('about ') ? `≈ ${says(mm, unit)}` : exact;
}

/** An area of floor: "215 sq ft", below 100 with a tenth ("42.5 sq ft"); "19.97 m²". Takes square mm, finite, 0 or more. */
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

/** `parts` is a whole number of 1/`per` inches, 0 or more. */
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

/** "1/2" for 4 of 8; empty for none. `per` is a power of two. */
function fractionWords(parts: number, per: number): string {
  if (parts === 0) return '';
  let [over, under] = [parts, per];
  while (over % 2 === 0) [over, under] = [over / 2, under / 2];
  return `${over}/${under}`;
}

/** Whole mm: below 1 m as cm, from 1 m on as m with two decimals, three where they are needed. */
function metricWords(mm: number): string {
  if (mm < 1000) return `${Math.floor(mm / 10)}${mm % 10 === 0 ? '' : `.${mm % 10}`} cm`;
  const digits = String(mm % 1000).padStart(3, '0');
  return `${Math.floor(mm / 1000)}.${digits.endsWith('0') ? digits.slice(0, 2) : digits} m`;
}
