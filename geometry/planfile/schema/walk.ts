import type * as v from 'valibot';
import { memoize } from '../../plane/memoize.ts';
import { SEVERAL_LINES } from './leaves.ts';

/** The properties of any valibot schema that the functions below read. */
interface Node {
  readonly type: string;
  readonly message?: unknown;
  readonly entries?: Readonly<Record<string, Node>>;
  readonly item?: Node;
  readonly items?: readonly Node[];
  readonly wrapped?: Node;
  /** The options of a union. */
  readonly options?: readonly Node[];
  readonly default?: unknown;
  readonly pipe?: readonly (Node | typeof SEVERAL_LINES)[];
}
export type Path = readonly (string | number)[];

// valibot's types expose these properties per kind of schema; every schema here is of a kind that has them.
const nodeOf = (schema: v.GenericSchema): Node => schema as unknown as Node;

export function isRecord(value: unknown): value is Readonly<Record<string, unknown>> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

const isNested = (value: unknown): boolean => typeof value === 'object' && value !== null;

/** Returns what the schema expects at a path, in words. The path must exist in the schema. */
export function expectedAt(schema: v.GenericSchema, path: Path): string {
  let node: Node | undefined = nodeOf(schema);
  let orNull = '';
  for (const step of [...path, null]) {
    orNull = '';
    while (node?.wrapped) {
      if (node.type === 'nullable') orNull = ', or null';
      node = node.wrapped;
    }
    if (step === null || !node) break;
    node = objectOption(node);
    node = typeof step === 'string' ? node.entries?.[step] : (node.items?.[step] ?? node.item);
  }
  // Only a point has a fixed number of entries: it has no third number.
  return node ? `${String(node.message)}${orNull}` : 'no third number';
}

/**
 * Returns the value with defaults for all omitted keys. Keys keep the order of the file and unknown ones are preserved;
 * defaults are appended. Values that do not match the schema are left alone. Does not mutate.
 */
export function withDefaults(schema: v.GenericSchema, value: unknown): unknown {
  return filled(nodeOf(schema), value);
}

function filled(node: Node, value: unknown): unknown {
  if (node.wrapped) {
    if (value === null && node.type === 'nullable') return null;
    return filled(node.wrapped, value === undefined ? node.default : value);
  }
  const { item, entries } = node;
  if (item && Array.isArray(value)) return value.map((each) => filled(item, each));
  if (!entries || !isRecord(value)) return value;
  const changed = new Map<string, unknown>();
  for (const [key, entry] of entriesOf(entries)) {
    const isThere = Object.hasOwn(value, key);
    if (!isThere && entry.default === undefined) continue;
    const before = isThere ? value[key] : undefined;
    // Most values are numbers and texts, which stay as they are.
    if (before !== undefined && !isNested(before)) continue;
    const now = filled(entry, before);
    if (!isThere || now !== before) changed.set(key, now);
  }
  return withEntries(value, changed);
}

/** Returns the record with these values, new keys last; the same record if there are none. Does not mutate. */
function withEntries(
  record: Readonly<Record<string, unknown>>,
  changed: ReadonlyMap<string, unknown>,
): Readonly<Record<string, unknown>> {
  if (changed.size === 0) return record;
  const all = Object.entries(record);
  for (const entry of all) if (changed.has(entry[0])) entry[1] = changed.get(entry[0]);
  for (const [key, each] of changed) if (!Object.hasOwn(record, key)) all.push([key, each]);
  // `fromEntries` defines properties, so a key named __proto__ becomes a plain key and does not change the prototype.
  return Object.fromEntries(all);
}

/** An unknown key and the object that has it. */
export interface UnknownKey {
  readonly path: Path;
  readonly key: string;
  /** The keys that the schema defines for this object. */
  readonly expected: readonly string[];
}

/** Returns every key that the schema does not define, in file order. The values of unknown keys are not searched. */
export function unknownKeys(schema: v.GenericSchema, value: unknown): readonly UnknownKey[] {
  const found: UnknownKey[] = [];
  const visit = (wrapping: Node, here: unknown, path: Path): void => {
    const { item, entries } = unwrapped(wrapping);
    if (item && Array.isArray(here)) for (const [index, each] of here.entries()) visit(item, each, [...path, index]);
    if (!entries || !isRecord(here)) return;
    const expected = Object.keys(entries);
    for (const [key, each] of Object.entries(here)) {
      const entry = Object.hasOwn(entries, key) ? entries[key] : undefined;
      // No path is made for the many values that have no keys of their own.
      if (!entry) found.push({ path, key, expected });
      else if (isNested(each) && holdsKeys(entry)) visit(entry, each, [...path, key]);
    }
  };
  visit(nodeOf(schema), value, []);
  return found;
}

/** A list that has more entries than the schema allows. */
export interface LongList {
  readonly path: Path;
  readonly length: number;
  readonly most: number;
}

/** Returns every list with more entries than the schema allows. Such a list is not searched further. */
export function longLists(schema: v.GenericSchema, value: unknown): readonly LongList[] {
  const found: LongList[] = [];
  const visit = (wrapping: Node, here: unknown, path: Path): void => {
    const node = unwrapped(wrapping);
    if (node.item && Array.isArray(here)) {
      const most = longest(node);
      if (here.length > most) found.push({ path, length: here.length, most });
      else if (holdsLists(node.item))
        for (const [index, each] of here.entries()) visit(node.item, each, [...path, index]);
    }
    if (!node.entries || !isRecord(here)) return;
    for (const [key, entry] of entriesOf(node.entries))
      if (Object.hasOwn(here, key) && isNested(here[key]) && holdsLists(entry)) visit(entry, here[key], [...path, key]);
  };
  visit(nodeOf(schema), value, []);
  return found;
}

/** Returns the value with each of these lists cut to its greatest length, so that no time is spent on endless lists. Does not mutate. */
export function withListsCut(value: unknown, long: readonly LongList[]): unknown {
  const cut = (here: unknown, path: Path, most: number): unknown => {
    const [step, ...rest] = path;
    if (step === undefined) return Array.isArray(here) ? here.slice(0, most) : here;
    if (Array.isArray(here)) return here.map((each, index) => (index === step ? cut(each, rest, most) : each));
    if (!isRecord(here)) return here;
    // A key named __proto__ stays a plain key.
    return Object.fromEntries(
      Object.entries(here).map(([key, each]) => [key, key === step ? cut(each, rest, most) : each]),
    );
  };
  return long.reduce((whole, { path, most }) => cut(whole, path, most), value);
}

/** Returns the greatest number of entries of a list. */
function longest({ pipe = [] }: Node): number {
  for (const step of pipe) {
    if (step.type === 'max_length' && 'requirement' in step) return Number(step.requirement);
    const inner = 'pipe' in step ? longest(step) : Number.POSITIVE_INFINITY;
    if (inner < Number.POSITIVE_INFINITY) return inner;
  }
  return Number.POSITIVE_INFINITY;
}

/** Returns whether values of a schema can hold lists of any length. */
const holdsLists: (wrapping: Node) => boolean = memoize((wrapping) => {
  const { item, entries = {} } = unwrapped(wrapping);
  return item !== undefined || Object.values(entries).some(holdsLists);
});

/** Returns whether values of a schema can hold objects. */
const holdsKeys: (wrapping: Node) => boolean = memoize((wrapping) => {
  const { item, entries } = unwrapped(wrapping);
  return entries !== undefined || (item !== undefined && holdsKeys(item));
});

/** The entries of a schema, listed once for the thousands of objects of a plan. */
const entriesOf = memoize((entries: NonNullable<Node['entries']>) => Object.entries(entries));

/**
 * Control characters: no text of a plan needs them, and they break pages and pictures made from it. With and without
 * line ends.
 */
// biome-ignore lint/suspicious/noControlCharactersInRegex: these are the signs that are taken out.
const CONTROL = /[\u0000-\u001f\u007f-\u009f]/g;
// biome-ignore lint/suspicious/noControlCharactersInRegex: these are the signs that are taken out.
const CONTROL_BUT_LINE_ENDS = /[\u0000-\u0009\u000b\u000c\u000e-\u001f\u007f-\u009f]/g;

/**
 * Returns the value without control characters in its texts; texts of several lines keep their line ends. Unknown
 * keys are left alone. Unchanged parts keep their identity. Does not mutate.
 */
export function withoutControlCharacters(schema: v.GenericSchema, value: unknown): unknown {
  return cleaned(nodeOf(schema), value);
}

function cleaned(wrapping: Node, value: unknown): unknown {
  if (typeof value !== 'string' && !isNested(value)) return value;
  const node = unwrapped(wrapping);
  if (node.type === 'string' && typeof value === 'string') {
    return value.replace(hasSeveralLines(node) ? CONTROL_BUT_LINE_ENDS : CONTROL, '');
  }
  const { item, entries } = node;
  if (item && Array.isArray(value)) {
    const list = value.map((each) => cleaned(item, each));
    return list.some((each, index) => each !== value[index]) ? list : value;
  }
  if (!entries || !isRecord(value)) return value;
  const changed = new Map<string, unknown>();
  for (const [key, each] of Object.entries(value)) {
    const entry = Object.hasOwn(entries, key) ? entries[key] : undefined;
    const now = entry ? cleaned(entry, each) : each;
    if (now !== each) changed.set(key, now);
  }
  return withEntries(value, changed);
}

function hasSeveralLines({ pipe = [] }: Node): boolean {
  return pipe.some((step) => step === SEVERAL_LINES || ('pipe' in step && hasSeveralLines(step)));
}

const unwrapped = memoize((node: Node): Node => {
  let inner = node;
  while (inner.wrapped) inner = inner.wrapped;
  return objectOption(inner);
});

/** Returns the option of a union that is an object; a schema that is no union is returned unchanged. */
function objectOption(node: Node): Node {
  return node.options?.find(({ entries }) => entries) ?? node;
}
