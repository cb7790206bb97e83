const FRACTIONS: Readonly<Record<string, string>> = {
  '½': '1/2',
  '⅓': '1/3',
  '⅔': '2/3',
  '¼': '1/4',
  '¾': '3/4',
  '⅛': '1/8',
  '⅜': '3/8',
  '⅝': '5/8',
  '⅞': '7/8',
};

/**
 * Normalizes typed text: curly quotes and primes become ' and ", dashes become -, ½ becomes 1/2 with a
 * space before it, whitespace collapses to single spaces, letters become lower case.
 */
export function plainText(text: string): string {
  return text
    .replace(/[½⅓⅔¼¾⅛⅜⅝⅞]/g, (sign) => ` ${FRACTIONS[sign]}`)
    .replace(/[‘’‛′ʹʼ`´]/g, "'")
    .replace(/[“”‟″ʺ]|''/g, '"')
    .replace(/[‐‑‒–—−]/g, '-')
    .replace(/⁄/g, '/')
    .replace(/\s+/g, ' ')
    .trim()
    .toLowerCase();
}
