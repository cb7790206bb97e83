import type * as v from 'valibot';
import { SEVERAL_LINES } from './leaves.ts';

/** What the walks below read of a valibot schema, whatever its kind. */
interface Node {
  readonly type: string;
  readonly message?: unknown;
  readonly entries?: Readonly<Record<string, Node>>;
  readonly item?: Node;
  readonly items?: readonly Node[];
  readonly wrapped?: Node;
  readonly default?: unknown;
  readonly pipe?: readonly (Node | typeof SEVERAL_LINES)[];
}
export type Path = readonly (string | number)[];

// valibot's types hide the parts of a schema behind its kind; every schema of ours is made of these kinds only.
const nodeOf = (schema: v.GenericSchema): Node => schema as unknown as Node;

export function isRecord(value: unknown): value is Readonly<Record<string, unknown>> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

/** The words for what belongs at a place of the file. The path stays inside the schema. */
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
    node = typeof step === 'string' ? node.entries?.[step] : (node.items?.[step] ?? node.item);
  }
  // The one place that the schema closes: a point has no third number.
  return node ? `${String(node.message)}${orNull}` : 'no third number';
}

/**
 * The value with every key that was left out filled in by its default. Keys keep the order of the file, and those that
 * the schema does not know are kept as they are; added ones come last. Where the value does not fit the schema, it is
 * left alone. Nothing is mutated.
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
  const known = (key: string) => (Object.hasOwn(entries, key) ? entries[key] : undefined);
  const kept = Object.entries(value).map(([key, each]) => {
    const entry = known(key);
    return [key, entry ? filled(entry, each) : each] as const;
  });
  const added = Object.entries(entries)
    .filter(([key, entry]) => !Object.hasOwn(value, key) && entry.default !== undefined)
    .map(([key, entry]) => [key, filled(entry, undefined)] as const);
  // fromEntries defines each key, so that a key named __proto__ is kept as a plain key and changes no prototype.
  return Object.fromEntries([...kept, ...added]);
}

/** An unknown key of a file and the object that it stands in. */
export interface UnknownKey {
  readonly path: Path;
  readonly key: string;
  /** The keys that the schema knows in this object. */
  readonly known: readonly string[];
}

/** Every key that the schema does not know, in the order of the file. What an unknown key holds is not looked into. */
export function unknownKeys(schema: v.GenericSchema, value: unknown): readonly UnknownKey[] {
  const found: UnknownKey[] = [];
  const visit = (wrapping: Node, here: unknown, path: Path): void => {
    const { item, entries } = unwrapped(wrapping);
    if (item && Array.isArray(here)) for (const [index, each] of here.entries()) visit(item, each, [...path, index]);
    if (!entries || !isRecord(here)) return;
    const known = Object.keys(entries);
    for (const [key, each] of Object.entries(here)) {
      const entry = Object.hasOwn(entries, key) ? entries[key] : undefined;
      if (entry) visit(entry, each, [...path, key]);
      else found.push({ path, key, known });
    }
  };
  visit(nodeOf(schema), value, []);
  return found;
}

/** Signs that no text of a plan needs and that break pages and pictures made of it; with and without the ends of lines. */
// biome-ignore lint/suspicious/noControlCharactersInRegex: these are the signs that are taken out.
const CONTROL = /[\u0000-\u001f\u007f-\u009f]/g;
// biome-ignore lint/suspicious/noControlCharactersInRegex: these are the signs that are taken out.
const CONTROL_BUT_LINE_ENDS = /[\u0000-\u0009\u000b\u000c\u000e-\u001f\u007f-\u009f]/g;

/**
 * The value without the control characters in its texts; text of several lines keeps its line ends. What the schema does
 * not know is left alone. A part that needs no change stays the same object. Nothing is mutated.
 */
export function withoutControlCharacters(schema: v.GenericSchema, value: unknown): unknown {
  return cleaned(nodeOf(schema), value);
}

function cleaned(wrapping: Node, value: unknown): unknown {
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
  let changed = false;
  const kept = Object.entries(value).map(([key, each]) => {
    const entry = Object.hasOwn(entries, key) ? entries[key] : undefined;
    const now = entry ? cleaned(entry, each) : each;
    changed ||= now !== each;
    return [key, now] as const;
  });
  return changed ? Object.fromEntries(kept) : value;
}

function hasSeveralLines({ pipe = [] }: Node): boolean {
  return pipe.some((step) => step === SEVERAL_LINES || ('pipe' in step && hasSeveralLines(step)));
}

function unwrapped(node: Node): Node {
  let inner = node;
  while (inner.wrapped) inner = inner.wrapped;
  return inner;
}
