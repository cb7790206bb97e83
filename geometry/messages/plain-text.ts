/**
 * Makes text of unknown origin safe for everything written from it: paper and pictures (XML), tables (CSV), the
 * calendar and the terminal. Each of these escapes its own special characters; characters that none of them can hold are removed here.
 */

const ORDINARY = /^[ -~\u00a0-\u024f\u2010-\u2027\u2030-\u205e]*$/;
const LINE_ENDS = /\r\n|[\n\r\u0085\u2028\u2029]/g;

/** Returns the text on one line: line ends and tabs become a space, characters that no format can hold are removed. */
export function oneLine(text: string): string {
  return ORDINARY.test(text) ? text : allowed(text.replace(/[\t\n\r\u0085\u2028\u2029]+/g, ' '), '');
}

/** Returns the text with line ends as "\n"; tabs become a space, characters that no format can hold are removed. */
export function severalLines(text: string): string {
  return ORDINARY.test(text) ? text : allowed(text.replace(LINE_ENDS, '\n').replaceAll('\t', ' '), '\n');
}

/** Marks that change the direction of the text after them: in a terminal they affect more than their own text. */
const DIRECTION_MARKS = /[\u200e\u200f\u202a-\u202e\u2066-\u2069]/g;

/** Returns text that may be printed in a terminal, without characters that move the cursor, change colors or reverse text. */
export function forTerminal(text: string): string {
  return severalLines(text).replace(DIRECTION_MARKS, '');
}

/** Removes control characters except `kept`, unpaired surrogates, and characters that XML 1.0 (section 2.2) excludes. */
function allowed(text: string, kept: string): string {
  let all = '';
  for (const character of text) if (character === kept || isAllowed(character)) all += character;
  return all;
}

function isAllowed(character: string): boolean {
  const code = character.codePointAt(0) ?? 0;
  const control = code < 0x20 || (code >= 0x7f && code < 0xa0);
  const surrogate = code >= 0xd800 && code <= 0xdfff;
  return !control && !surrogate && code !== 0xfffe && code !== 0xffff;
}
