/**
 * Text of unknown origin made safe for whatever is written from it: paper and pictures (XML), tables (CSV), the
 * calendar and the terminal. Each of these escapes its own signs; what none of them can hold goes here.
 */

const ORDINARY = /^[ -~\u00a0-\u024f\u2010-\u2027\u2030-\u205e]*$/;
const LINE_ENDS = /\r\n|[\n\r\u0085\u2028\u2029]/g;

/** Returns the text on one line: line ends and tabs become a space, what no text can hold is left out. */
export function oneLine(text: string): string {
  return ORDINARY.test(text) ? text : allowed(text.replace(/[\t\n\r\u0085\u2028\u2029]+/g, ' '), '');
}

/** Returns the text with line ends as "\n"; tabs become a space, what no text can hold is left out. */
export function severalLines(text: string): string {
  return ORDINARY.test(text) ? text : allowed(text.replace(LINE_ENDS, '\n').replaceAll('\t', ' '), '\n');
}

/** Marks that reverse the text after them: in a terminal they reach beyond their own text. */
const DIRECTION_MARKS = /[\u200e\u200f\u202a-\u202e\u2066-\u2069]/g;

/** Returns what may be printed in a terminal: no sign that moves the cursor, changes colors or reverses text. */
export function forTerminal(text: string): string {
  return severalLines(text).replace(DIRECTION_MARKS, '');
}

/** Without control characters but `kept`, halves of surrogate pairs, and what XML 1.0 (section 2.2) bars. */
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
