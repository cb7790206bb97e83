import type { Plugin } from 'vite';

const SCHEMA_MODULES = /[\\/]geometry[\\/]planfile[\\/]schema[\\/]\w[^\\/]*\.ts$/;

/** The parts of a syntax tree (ESTree) that are looked at. */
interface Node {
  readonly type: string;
  readonly start: number;
  readonly end: number;
  readonly callee?: { readonly type: string; readonly name?: string };
  readonly arguments?: readonly Node[];
}

/**
 * Returns the plug-in that leaves out what `about` says of each key of a plan file: the published JSON Schema has it, the reader in the
 * page has no use for it. Compressed it would be as long as a stage of the app.
 */
export function schemaTextsPlugin(): Plugin {
  return {
    name: 'stillspot-schema-texts',
    apply: 'build',
    transform(code, id) {
      if (!SCHEMA_MODULES.test(id)) return null;
      return { code: withoutAbout(code, this.parse(code)), map: null };
    },
  };
}

/** Returns the code with each call `about(schema, text)` replaced by its schema. @param tree of the code, ESTree */
export function withoutAbout(code: string, tree: unknown): string {
  const cuts = callsIn(tree).flatMap(({ start, end, arguments: [schema] = [] }) =>
    schema
      ? ([
          [start, schema.start],
          [schema.end, end],
        ] as const)
      : [],
  );
  // From the end, so that the places before stay.
  return [...cuts]
    .sort(([a], [b]) => b - a)
    .reduce((text, [start, end]) => text.slice(0, start) + text.slice(end), code);
}

function callsIn(node: unknown): readonly Node[] {
  if (Array.isArray(node)) return node.flatMap(callsIn);
  if (typeof node !== 'object' || node === null) return [];
  const { type, callee, arguments: given } = node as Partial<Node>;
  const isAbout = type === 'CallExpression' && callee?.name === 'about' && given?.length === 2;
  const inner = Object.values(node).flatMap(callsIn);
  return isAbout ? [node as Node, ...inner] : inner;
}
