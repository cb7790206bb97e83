import type { Plugin } from 'vite';

const SCHEMA_MODULES = /[\\/]geometry[\\/]planfile[\\/]schema[\\/]\w[^\\/]*\.ts$/;

/** The used parts of a syntax tree (ESTree). */
interface Node {
  readonly type: string;
  readonly start: number;
  readonly end: number;
  readonly callee?: { readonly type: string; readonly name?: string };
  readonly arguments?: readonly Node[];
}

/**
 * Returns the plug-in that removes the descriptions of plan file keys, given by `about`: the published JSON Schema has them, the reader in
 * the page does not need them. Compressed they would be as large as the code of a stage.
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
  // From the end, so that the earlier offsets stay valid.
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
