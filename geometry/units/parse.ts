import type { Mm } from '../plane/types.ts';
import type { LengthUnit } from './constants.ts';
import { echoLength } from './format.ts';
import { plainText } from './plain-text.ts';

export interface LengthOptions {
  /** Whether a negative length is allowed, for example an offset. Default: no. */
  readonly negative?: boolean;
  /** Unit of a bare number. 'large' (default): feet or meters. 'small': inches or cm, for fields of small sizes. */
  readonly bare?: 'large' | 'small';
}

export type ParsedLength =
  | { readonly ok: true; readonly mm: Mm; readonly echo: string }
  | { readonly ok: false; readonly message: string };

/** A fraction of integers: lengths are computed exactly and divided once, so that 36 in is exactly 914.4. */
interface Ratio {
  readonly over: number;
  readonly under: number;
}
type Reading = { readonly length: Ratio } | { readonly trouble: string } | null;

/** Tenths of a mm in each unit, integers. */
const TENTHS = { ft: 3048, in: 254, m: 10_000, cm: 100, mm: 10 } as const;
type Unit = keyof typeof TENTHS;

/** 10 km, the greatest coordinate that the plan file allows. */
const LONGEST_LENGTH: Mm = 1e7;

const NUMBER = String.raw`\d+(?:[.,]\d+)?|[.,]\d+`;
const FRACTION = String.raw`\d+\/\d+`;
const AMOUNT = String.raw`(?:\d+[ -]+)?${FRACTION}|${NUMBER}`;
const FT = String.raw`(?:'|feet|foot|ft\.?)`;
const IN = String.raw`(?:"|inches|inch|in\.?)`;
const FRACTION_AFTER_MARK = new RegExp(`(\\d) ?${IN} ?(${FRACTION}) ?${IN}?$`);
const pattern = (source: string): RegExp => new RegExp(`^${source}$`);
const FEET = pattern(`(${AMOUNT}) ?${FT}`);
const INCHES = pattern(`(${AMOUNT}) ?${IN}`);
const FEET_AND_INCHES = pattern(String.raw`(\d+) ?${FT}(?:, |[ -]*)(${AMOUNT}) ?${IN}?`);
// The inches cannot be a bare fraction: "6 9/8 in" is a typing error, not 6 ft 9/8 in.
const TWO_BARE = pattern(String.raw`(\d+)(?: ?- ?| )(\d+[ -]+${FRACTION}|${NUMBER}) ?${IN}?`);
const METRIC = pattern(`(${NUMBER}) ?(mm|cm|m|millimet(?:er|re)s?|centimet(?:er|re)s?|met(?:er|re)s?)\\.?`);
const METERS_AND_CM = pattern(`(\\d+) ?m (${NUMBER}) ?cm`);
const BARE = pattern(`(${NUMBER})`);
const BARE_FRACTION = pattern(`(${FRACTION})`);
const BARE_MIXED = pattern(String.raw`(\d+[ -]+${FRACTION})`);

/**
 * Parses a length as people type it: feet and inches with fractions in the usual forms, decimal feet or inches, cm,
 * m, mm. Every unit is accepted whatever the display unit is; the display unit selects the format of the echo and the
 * unit of a bare number (see `LengthOptions.bare`).
 *
 * Returns mm and the length as it was understood, or an error message of one sentence. Never throws.
 */
export function parseLength(text: string, unit: LengthUnit, options: LengthOptions = {}): ParsedLength {
  const plain = withFractionBeforeMark(plainText(text));
  const quoted = quote(text);
  if (plain === '') return { ok: false, message: `Nothing is written. ${examples(unit)}` };
  const below = plain.startsWith('-');
  // No real length is longer; the regular expressions need not run on a page of pasted text.
  const fits = plain.length <= 60;
  const reading = fits ? read(below ? plain.slice(1).trimStart() : plain, unit, options.bare ?? 'large', quoted) : null;
  if (reading === null) return { ok: false, message: `${quoted} is not a length. ${examples(unit)}` };
  if ('trouble' in reading) return { ok: false, message: reading.trouble };
  const size = reading.length.over / (reading.length.under * 10);
  if (!(size <= LONGEST_LENGTH))
    return { ok: false, message: `${quoted} is longer than 10 km. Check the number and its unit.` };
  if (below && size > 0 && !options.negative) {
    return { ok: false, message: `${quoted} is below zero. Write a length of 0 or more.` };
  }
  const mm = below && size > 0 ? -size : size;
  return { ok: true, mm, echo: echoLength(mm, unit) };
}

/** Laser tapes show the fraction after the inch mark, and people say it there: 12'06"1/2 and 12 ft 6 in 1/2 are 12' 6 1/2". */
function withFractionBeforeMark(plain: string): string {
  return plain.replace(FRACTION_AFTER_MARK, '$1 $2"');
}

function read(plain: string, unit: LengthUnit, bare: 'large' | 'small', quoted: string): Reading {
  return (
    readMarked(plain, quoted) ??
    (unit === 'metric' ? readBareMetric(plain, bare, quoted) : readBareFeet(plain, bare, quoted))
  );
}

/** Reads a length that names its unit. */
function readMarked(plain: string, quoted: string): Reading {
  const one = (found: RegExpExecArray, unit: Unit): Reading => amount(found[1] ?? '', unit, quoted);
  const feet = FEET.exec(plain);
  if (feet) return one(feet, 'ft');
  const inches = INCHES.exec(plain);
  if (inches) return one(inches, 'in');
  const both = FEET_AND_INCHES.exec(plain);
  if (both) return feetAndInches(both, quoted);
  const metric = METRIC.exec(plain);
  if (metric) return one(metric, metricUnit(metric[2] ?? ''));
  const meters = METERS_AND_CM.exec(plain);
  return meters && sum(amount(meters[1] ?? '', 'm', quoted), amount(meters[2] ?? '', 'cm', quoted));
}

function readBareFeet(plain: string, bare: 'large' | 'small', quoted: string): Reading {
  const number = BARE.exec(plain);
  if (number) return amount(number[1] ?? '', bare === 'small' ? 'in' : 'ft', quoted);
  // A bare fraction is always of an inch: no tape is marked in fractions of a foot.
  const fraction = BARE_FRACTION.exec(plain);
  if (fraction) return amount(fraction[1] ?? '', 'in', quoted);
  const mixed = BARE_MIXED.exec(plain);
  if (mixed?.[1] && bare === 'small') return amount(mixed[1], 'in', quoted);
  if (mixed?.[1]) {
    const tidy = mixed[1].replace(/[ -]+/, ' ');
    return { trouble: `${quoted} could be feet or inches. Write ${tidy} ft or ${tidy} in.` };
  }
  const two = TWO_BARE.exec(plain);
  return two && feetAndInches(two, quoted);
}

function readBareMetric(plain: string, bare: 'large' | 'small', quoted: string): Reading {
  const number = BARE.exec(plain);
  return number && amount(number[1] ?? '', bare === 'small' ? 'cm' : 'm', quoted);
}

function feetAndInches(found: RegExpExecArray, quoted: string): Reading {
  const [, feet = '', inches = ''] = found;
  const rest = amount(inches, 'in', quoted);
  if (rest && 'length' in rest && rest.length.over >= rest.length.under * TENTHS.ft) {
    return { trouble: `${quoted} has 12 in or more beside the feet. Write it all in inches, or carry the feet over.` };
  }
  return sum(amount(feet, 'ft', quoted), rest);
}

/** Reads "12", "12.5", "12,5", ".5", "7/8", "6 1/2" or "6-1/2" of a unit, in tenths of a mm. */
function amount(text: string, unit: Unit, quoted: string): Reading {
  const mixed = /^(?:(\d+)[ -]+)?(\d+)\/(\d+)$/.exec(text);
  if (mixed) {
    const [, whole, over, under] = mixed.map(Number);
    const proper = Number(over) < Number(under) || (mixed[1] === undefined && Number(under) > 0);
    if (over === undefined || under === undefined || !proper) return null;
    return { length: { over: ((mixed[1] === undefined ? 0 : Number(whole)) * under + over) * TENTHS[unit], under } };
  }
  // A comma before three digits may separate thousands; only in meters is the decimal reading certain.
  if (unit !== 'm' && /^\d{1,3},\d{3}$/.test(text)) {
    const [joined, pointed] = [text.replace(',', ''), text.replace(',', '.')];
    return {
      trouble: `The comma in ${quoted} could mark thousands or decimals. Write ${joined} ${unit} or ${pointed} ${unit}.`,
    };
  }
  const [whole = '', decimals = ''] = text.split(/[.,]/);
  const under = 10 ** decimals.length;
  return { length: { over: Number(whole + decimals) * TENTHS[unit], under } };
}

function sum(a: Reading, b: Reading): Reading {
  if (!a || !b) return null;
  if ('trouble' in a) return a;
  if ('trouble' in b) return b;
  const over = a.length.over * b.length.under + b.length.over * a.length.under;
  return { length: { over, under: a.length.under * b.length.under } };
}

function metricUnit(word: string): Unit {
  if (word.startsWith('mil') || word === 'mm') return 'mm';
  return word.startsWith('c') ? 'cm' : 'm';
}

function quote(text: string): string {
  const short = text.trim();
  return `"${short.length > 40 ? `${short.slice(0, 40)}…` : short}"`;
}

function examples(unit: LengthUnit): string {
  return unit === 'metric' ? 'Write it like 3.81 m or 35 cm.' : 'Write it like 12 ft 6 1/2 in or 6.5 in.';
}
