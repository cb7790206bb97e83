import { readdirSync, readFileSync } from 'node:fs';
import { posix } from 'node:path';
import { parseSync } from 'vite';

/** A text that a user may read: on screen, on paper, on the command line, in a schema, a sample or a README. */
export interface ShownText {
  readonly path: string;
  readonly line: number;
  readonly text: string;
}

/** Attributes without words. */
const CODE_ATTRIBUTES =
  /^(?:className|id|htmlFor|role|type|d|points|viewBox|key|href|stroke|fill|transform|style|scope|rel|command|accept|pattern|inputMode|autoComplete|enterKeyHint|aria-(?:controls|labelledby|describedby|live|current|haspopup))$|^data-/;

const SKIPPED =
  /^(?:ImportDeclaration|ExportAllDeclaration|ImportExpression|TSLiteralType|TSInterfaceDeclaration|TSTypeAliasDeclaration|TSTypeAnnotation|TSTypeParameterInstantiation)$/;

type Syntax = { readonly type: string; readonly start: number; readonly [key: string]: unknown };

/** Returns the string literals, template texts and JSX texts of one file, without imports, types and code attributes. */
export function textsOfSource(path: string, source: string): readonly ShownText[] {
  const texts: ShownText[] = [];
  const add = (start: number, text: string) => {
    const line = source.slice(0, start).split('\n').length;
    texts.push({ path, line, text: text.replaceAll(/\s+/g, ' ') });
  };
  const walk = (node: unknown): void => {
    if (Array.isArray(node)) {
      for (const each of node) walk(each);
      return;
    }
    if (!isSyntax(node) || SKIPPED.test(node.type)) return;
    if (node.type === 'JSXAttribute' && CODE_ATTRIBUTES.test(attributeName(node))) return;
    const words = wordsOf(node);
    if (words !== null) add(node.start, words);
    for (const [key, child] of Object.entries(node)) {
      const isParsed = key === 'quasis' || (key === 'key' && node.type === 'Property');
      if (!isParsed) walk(child);
    }
  };
  walk(parseSync(path, source, { lang: path.endsWith('x') ? 'tsx' : 'ts' }).program);
  return texts;
}

/** Returns the words of a literal, of JSX text or of a template; null for other syntax. */
function wordsOf({ type, value, quasis }: Syntax): string | null {
  if (type === 'Literal' || type === 'JSXText') return typeof value === 'string' ? value : null;
  if (type !== 'TemplateLiteral') return null;
  return (quasis as { value: { cooked: string } }[]).map((part) => part.value.cooked).join('…');
}

const isSyntax = (node: unknown): node is Syntax =>
  typeof node === 'object' && node !== null && typeof (node as Syntax).type === 'string';

function attributeName({ name }: Syntax): string {
  const inner = (name as { name: unknown }).name;
  return typeof inner === 'string' ? inner : '';
}

const linesOf = (path: string): readonly ShownText[] =>
  readFileSync(path, 'utf8')
    .replaceAll(/```[\s\S]*?```|`[^`]*`/g, (code) => code.replaceAll(/[^\n]/g, ''))
    .split('\n')
    .map((text, i) => ({ path, line: i + 1, text }));

/** Returns every text that the app, its papers, the command line, the schema, the samples and the two READMEs of users can show. */
export function shownTexts(): readonly ShownText[] {
  const sources = ['src', 'geometry'].flatMap((top) =>
    readdirSync(top, { recursive: true, encoding: 'utf8' })
      .filter((name) => /\.tsx?$/.test(name))
      .map((name) => posix.join(top, name.replaceAll('\\', '/'))),
  );
  const samples = readdirSync('samples').filter((name) => name.endsWith('.plan.json'));
  return [
    ...sources.flatMap((path) => textsOfSource(path, readFileSync(path, 'utf8'))),
    ...samples.flatMap((name) => valuesOf(`samples/${name}`)),
    ...['README.md', 'samples/README.md'].flatMap(linesOf),
  ];
}

/** Returns the texts of a plan file: names, labels, notes. */
function valuesOf(path: string): readonly ShownText[] {
  const texts: ShownText[] = [];
  JSON.parse(readFileSync(path, 'utf8'), (_, value: unknown) => {
    if (typeof value === 'string' && value.length < 1000) texts.push({ path, line: 0, text: value });
    return value;
  });
  return texts;
}
