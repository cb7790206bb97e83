import type * as v from 'valibot';

/** What the walks below read of a valibot schema, whatever its kind. */
interface Node {
  readonly type: string;
  readonly message?: unknown;
  readonly entries?: Readonly<Record<string, Node>>;
  readonly item?: Node;
  readonly items?: readonly Node[];
  readonly wrapped?: Node;
  readonly default?: unknown;
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
