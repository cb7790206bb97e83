import type { Plan } from '../plan/model.ts';
import { assert } from '../plane/assert.ts';

/** A value that fits on a line of this many characters is written on one: a wall, a point, a detector. */
const LINE = 110;

/**
 * Returns the text of the plan file: JSON with keys in their order, unknown ones included, and a line break at the
 * end. Every number reads back identically, −0 too. Throws when the plan contains values that JSON cannot represent.
 */
export function writePlan(plan: Plan): string {
  return `${written(plan, '', 0)}\n`;
}

/** `indent` is the indentation of the lines inside, minus two; `taken` the characters of the line before the value. */
function written(value: unknown, indent: string, taken: number): string {
  if (typeof value !== 'object' || value === null) return scalar(value);
  // The root and lists of objects are always written on several lines: one wall per line.
  const things = Array.isArray(value) && value.some((each) => typeof each === 'object' && !Array.isArray(each));
  const short = taken > 0 && !things ? onOneLine(value, LINE - indent.length - taken) : null;
  if (short !== null) return short;
  const inner = `${indent}  `;
  if (Array.isArray(value)) {
    if (value.length === 0) return '[]';
    return `[\n${value.map((each) => inner + written(each, inner, 1)).join(',\n')}\n${indent}]`;
  }
  const lines = entriesOf(value).map(([key, each]) => {
    const head = `${JSON.stringify(key)}: `;
    return inner + head + written(each, inner, head.length + 1);
  });
  return lines.length === 0 ? '{}' : `{\n${lines.join(',\n')}\n${indent}}`;
}

/**
 * Returns the value on one line, or null when that takes more than `room` characters; stops as soon as it does not fit.
 */
function onOneLine(value: unknown, room: number): string | null {
  if (typeof value !== 'object' || value === null) return within(scalar(value), room);
  const list = Array.isArray(value);
  const parts: readonly (readonly [head: string, each: unknown])[] = list
    ? value.map((each) => ['', each])
    : entriesOf(value).map(([key, each]) => [`${JSON.stringify(key)}: `, each]);
  if (parts.length === 0) return within(list ? '[]' : '{}', room);
  let line = list ? '[' : '{ ';
  for (const [index, [head, each]] of parts.entries()) {
    const before = `${index === 0 ? '' : ', '}${head}`;
    const short = onOneLine(each, room - line.length - before.length);
    if (short === null) return null;
    line += before + short;
  }
  return within(line + (list ? ']' : ' }'), room);
}

function within(text: string, room: number): string | null {
  return text.length <= room ? text : null;
}

/** A key whose value is undefined counts as missing. */
function entriesOf(value: object): readonly (readonly [string, unknown])[] {
  return Object.entries(value).filter(([, each]) => each !== undefined);
}

function scalar(value: unknown): string {
  // JSON.stringify drops the sign of −0.
  if (Object.is(value, -0)) return '-0';
  const fits = typeof value === 'number' ? Number.isFinite(value) : ['string', 'boolean'].includes(typeof value);
  assert(fits || value === null, `a plan holds only what JSON can hold, got ${String(value)}`);
  return JSON.stringify(value);
}
