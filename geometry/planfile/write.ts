import type { Plan } from '../plan/model.ts';
import { assert } from '../plane/assert.ts';

/** A value that fits on a line of this many characters is written on one line: a wall, a point, a detector. */
const LINE = 110;

/**
 * Returns the text of the plan file: JSON with keys in their order, unknown ones included, and a line break at the
 * end. Every number reads back identically, −0 too. Throws when the plan contains values that JSON cannot represent.
 */
export function writePlan(plan: Plan): string {
  return `${written(plan, '', 0)}\n`;
}

/** `indent` is the indentation of the lines inside, minus two; `taken` is the number of characters before the value on its line. */
function written(value: unknown, indent: string, taken: number): string {
  if (typeof value !== 'object' || value === null) return scalar(value);
  // The root and lists of objects are always written on several lines: one wall per line.
  const things = Array.isArray(value) && value.some((each) => typeof each === 'object' && !Array.isArray(each));
  const short = taken > 0 && !things ? onOneLine(value, LINE - indent.length - taken) : null;
  if (short !== null) return short;
  const inner = `${indent}  `;
  if (Array.isArray(value)) {
    if (value.length === 0) return '[]';
    return `[\n${value.map((each) => inner + entry(each, inner)).join(',\n')}\n${indent}]`;
  }
  const lines = keysOf(value).map((key) => {
    const head = headOf(key);
    return inner + head + written((value as Keyed)[key], inner, head.length + 1);
  });
  return lines.length === 0 ? '{}' : `{\n${lines.join(',\n')}\n${indent}}`;
}

/** The text of list entries written before: after an edit, nearly all entries are the same objects. */
const writtenEntries = new WeakMap<object, { readonly indent: string; readonly text: string }>();
/** At most this many keys are cached, because foreign files may have any number of keys. */
const MOST_HEADS = 1000;
/** Longer entries are not cached: levels and pictures contain other entries or are rare. */
const LONGEST_KEPT = 1000;

function entry(value: unknown, indent: string): string {
  if (typeof value !== 'object' || value === null) return scalar(value);
  const before = writtenEntries.get(value);
  if (before?.indent === indent) return before.text;
  const text = written(value, indent, 1);
  if (text.length <= LONGEST_KEPT) writtenEntries.set(value, { indent, text });
  return text;
}

/**
 * Returns the value on one line, or null when that takes more than `room` characters; stops as soon as it does not fit.
 */
function onOneLine(value: unknown, room: number): string | null {
  if (typeof value !== 'object' || value === null) return within(scalar(value), room);
  const isList = Array.isArray(value);
  const opens = isList ? '[' : '{ ';
  let line = opens;
  for (const key of Object.keys(value)) {
    const each = (value as Keyed)[key];
    if (each === undefined) continue;
    if (line !== opens) line += ', ';
    if (!isList) line += headOf(key);
    const short = onOneLine(each, room - line.length);
    if (short === null) return null;
    line += short;
  }
  if (line === opens) return within(isList ? '[]' : '{}', room);
  return within(line + (isList ? ']' : ' }'), room);
}

type Keyed = Readonly<Record<string, unknown>>;

function within(text: string, room: number): string | null {
  return text.length <= room ? text : null;
}

/** A key whose value is undefined counts as missing. */
function keysOf(value: object): readonly string[] {
  return Object.keys(value).filter((key) => (value as Keyed)[key] !== undefined);
}

/** The text of keys, cached because a plan has few different keys, each thousands of times. */
const heads = new Map<string, string>();

function headOf(key: string): string {
  const before = heads.get(key);
  if (before !== undefined) return before;
  const head = `${JSON.stringify(key)}: `;
  if (heads.size < MOST_HEADS) heads.set(key, head);
  return head;
}

function scalar(value: unknown): string {
  // JSON.stringify drops the sign of −0.
  if (Object.is(value, -0)) return '-0';
  if (typeof value === 'number' && Number.isFinite(value)) return String(value);
  if (typeof value === 'string' || typeof value === 'boolean' || value === null) return JSON.stringify(value);
  assert(false, `a plan holds only what JSON can hold, got ${String(value)}`);
}
