/** Degrees north and east; null: not known. */
export interface Coordinates {
  readonly latitude: number | null;
  readonly longitude: number | null;
}

/** Returns a sentence with the previous location, after another is entered; empty if there was none. */
export function wasWords({ latitude, longitude }: Coordinates): string {
  return latitude === null || longitude === null ? '' : ` It was ${latitude}, ${longitude}; Undo restores that.`;
}

/**
 * Returns degrees that end in a compass letter as a plain number: south and west are negative, so "42.9 S" is "-42.9" and "75.6° W" is
 * "-75.6". A text without such a letter, or with a letter of the other axis, is returned unchanged.
 */
export function signedDegrees(text: string, [above, below]: readonly [above: string, below: string]): string {
  const letter = text.slice(-1).toUpperCase();
  if (letter !== above && letter !== below) return text;
  const degrees = text.slice(0, -1).replace('°', '').trim().replace(/^[+-]/, '');
  return letter === below ? `-${degrees}` : degrees;
}
