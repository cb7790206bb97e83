/** The spaces at which no line may break become no-break spaces. */

const IN_LENGTH = /(?<=\d|\d (?:ft|m)) (?=\d|ft\b|in\b|m\b|cm\b|mm\b|sq ft\b)|(?<=\d sq) (?=ft\b)/g;
const IN_RESULT = /(?<=\d) (?=%|pCi\/L|Bq|(?:h|hours?|days?)\b)/g;
const IN_INSTANT = /(?<=\d) (?=\p{L})|(?<=, \p{L}+) (?=\d)/gu;

/** Returns the text with each length and area, "1 ft 10 1/2 in", each result, "4 pCi/L", and each duration, "5 days", on one line. */
export function unbrokenFigures(text: string): string {
  return text.replace(IN_LENGTH, '\u00a0').replace(IN_RESULT, '\u00a0');
}

/** Returns the text of an instant with its date and its time of day each on one line. */
export function unbrokenInstant(text: string): string {
  return text.replace(IN_INSTANT, '\u00a0');
}
