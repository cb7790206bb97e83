import { type LengthUnit, parseLength } from '../../../geometry/units/index.ts';

/** The units in which a laser tape types bare numbers. */
export const TAPE_UNITS = ['ft', 'in', 'm', 'cm', 'mm'] as const;
export type TapeUnit = (typeof TAPE_UNITS)[number];

export function isTapeUnit(value: unknown): value is TapeUnit {
  return TAPE_UNITS.some((unit) => unit === value);
}

/** What a tape typed, as a length. */
export type TapeText =
  /** With its unit, as it goes into a field. */
  | { readonly kind: 'length'; readonly text: string; readonly echo: string }
  /** A bare number, and nobody has said in which unit the tape types. */
  | {
      readonly kind: 'bare';
      readonly text: string;
      /** A field took it, in the unit that bare numbers have there. */
      readonly isTaken?: boolean;
    }
  | { readonly kind: 'unread'; readonly text: string; readonly message: string };

const BARE = /^\d*[.,]?\d+$/;

/** @param unit the unit of the tape's bare numbers; null where nobody has said so */
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
 * Returns what a field shall hold in place of what was typed into it; null where it stays. Only a bare number that came all at once gets
 * the unit of the tape: after a space, as after the end of a length that was begun before, a hand goes on.
 */
export function withTapeUnit(held: string, typed: string, reading: TapeText): string | null {
  const cameAtOnce = held.trim() === typed;
  return reading.kind === 'length' && cameAtOnce && reading.text !== typed ? reading.text : null;
}
