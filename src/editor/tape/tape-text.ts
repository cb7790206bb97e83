import { type LengthUnit, parseLength } from '../../../geometry/units/index.ts';

/** The units in which a laser tape types bare numbers. */
export const TAPE_UNITS = ['ft', 'in', 'm', 'cm', 'mm'] as const;
export type TapeUnit = (typeof TAPE_UNITS)[number];

export function isTapeUnit(value: unknown): value is TapeUnit {
  return TAPE_UNITS.some((unit) => unit === value);
}

/** A text that a tape typed, read as a length. */
export type TapeText =
  /** A length with its unit, as it is put into a field. */
  | { readonly kind: 'length'; readonly text: string; readonly echo: string }
  /** A bare number, while the unit of the tape is not known. */
  | {
      readonly kind: 'bare';
      readonly text: string;
      /** Whether a field has taken it, in the unit of the field's bare numbers. */
      readonly isTaken?: boolean;
    }
  | { readonly kind: 'unread'; readonly text: string; readonly message: string };

const BARE = /^\d*[.,]?\d+$/;

/** Reads a text that a tape typed. @param unit the unit of the tape's bare numbers; null if it is not known */
export function readTapeText(typed: string, unit: TapeUnit | null, display: LengthUnit): TapeText {
  const text = typed.trim();
  const isBare = BARE.test(text);
  if (isBare && !unit) return { kind: 'bare', text };
  const whole = isBare ? `${text} ${unit}` : text;
  const length = parseLength(whole, display);
  return length.ok
    ? { kind: 'length', text: whole, echo: length.echo }
    : { kind: 'unread', text, message: length.message };
}

/**
 * Returns the text that replaces the text of a field after a tape typed into it; null if the text stays. Only a bare number that is the
 * whole text of the field gets the unit of the tape: one that is typed after other text continues a length that was begun by hand.
 */
export function withTapeUnit(held: string, typed: string, reading: TapeText): string | null {
  const cameAtOnce = held.trim() === typed;
  return reading.kind === 'length' && cameAtOnce && reading.text !== typed ? reading.text : null;
}
