import { readdirSync, readFileSync } from 'node:fs';
import { posix } from 'node:path';
import { parseSync } from 'vite';
import { describe, expect, it } from 'vitest';

interface SourceFile {
  /** From the project's top, with forward slashes. */
  readonly path: string;
  readonly text: string;
}

function sourceFiles(folder: string, ending = /\.tsx?$/): SourceFile[] {
  return readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .map((name) => posix.join(folder, name.replaceAll('\\', '/')))
    .filter((path) => ending.test(path))
    .map((path) => ({ path, text: readFileSync(path, 'utf8') }));
}

/** An import statement, an export-from statement (both begin their line), a dynamic import. */
const IMPORTS = [
  /^import\b(?:[\s\w{},*]*?\bfrom)?\s*(['"])([^'"]+)\1/gm,
  /^export\s+(?:type\s+)?(?:\*(?:\s+as\s+\w+)?|\{[^}]*\})\s*from\s*(['"])([^'"]+)\1/gm,
  /\bimport\(\s*(['"`])([^'"`]+)\1/g,
];

/** Every module named by an import, an export-from or a dynamic import. */
function importsOf(text: string): string[] {
  return IMPORTS.flatMap((form) => [...text.matchAll(form)].map(([, , name = '']) => name));
}

/** The text without comments: a comment may name what the code must not. Strings are left in, on the strict side. */
const codeOf = (text: string) => text.replace(/\/\*[\s\S]*?\*\//g, '').replace(/(^|\s)\/\/.*$/gm, '$1');

/** True for a relative import that stays inside `folder`. */
function staysInside(folder: string, path: string, name: string): boolean {
  return name.startsWith('.') && posix.join(posix.dirname(path), name).startsWith(`${folder}/`);
}

function mayImport(path: string, name: string): boolean {
  if (staysInside('geometry', path, name)) return true;
  if (name === '@turf/turf') return path === 'geometry/recheck/planar-turf.ts';
  if (name === 'suncalc') return path === 'geometry/sun/position.ts';
  return ['valibot', 'robust-predicates', 'flatbush'].includes(name);
}

/**
 * What geometry/ must not touch: the same plan gives the same answer, everywhere and at any time. A full stop needs a
 * letter behind it: a sentence about a window may end with one.
 */
const IMPURE =
  /\b(?:document|window|navigator|localStorage|indexedDB|process|globalThis)(?:\.\w|\[)|\bDate\.now\b|\bnew Date\(\s*\)|\bDate\(\s*\)|\bMath\.random\b|\bcrypto\.|\bperformance\.|\b(?:fetch|setTimeout|setInterval)\s*\(/g;

/** A color or a size of type that is written out where the tokens should be asked. */
const LITERAL_LOOKS =
  /#(?:[0-9a-f]{3,4}|[0-9a-f]{6}|[0-9a-f]{8})\b|\b(?:rgb|rgba|hsl|hsla|hwb|lab|lch|oklab|oklch)\(|\bfont-size:\s*[\d.]+\w*|\bfont:\s*[^;]*\d+px|\bsizePx:\s*\d|\bfontSize:\s*\d|(?:color|color|background|fill|stroke)(?:Style)?['"]?\s*[:=]\s*['"]?(?:white|black|red|green|blue|gr[ae]y|silver|orange|yellow)\b/gi;

/** Whether a module waits for something before it has been evaluated: an `await` outside of every function. */
function awaitsAtTopLevel({ path, text }: SourceFile): boolean {
  const isAwaited = (node: unknown): boolean => {
    if (Array.isArray(node)) return node.some(isAwaited);
    if (typeof node !== 'object' || node === null) return false;
    const { type, ...parts } = node as { readonly type?: unknown };
    if (type === 'AwaitExpression' || (type === 'ForOfStatement' && 'await' in parts && parts.await === true))
      return true;
    return typeof type === 'string' && /Function/.test(type) ? false : Object.values(parts).some(isAwaited);
  };
  return isAwaited(parseSync(path, text, { lang: path.endsWith('x') ? 'tsx' : 'ts' }).program);
}

const geometry = sourceFiles('geometry');
const src = sourceFiles('src');

describe('the guards of this file', () => {
  it.each([
    ["import { a } from '../../src/a.ts';", '../../src/a.ts'],
    ["export * from 'react';", 'react'],
    ["const a = await import('konva');", 'konva'],
    ['import "zustand";', 'zustand'],
    ["import {\n  a,\n} from '@turf/turf';", '@turf/turf'],
    ["export type { A } from 'konva/x';", 'konva/x'],
    ["import a, { type B } from 'react';", 'react'],
  ])('see the import in %j', (text, name) => {
    expect(importsOf(text)).toEqual([name]);
    expect(mayImport('geometry/plane/ring.ts', name)).toBe(false);
  });

  it.each([
    ['const a = await b;', true],
    ['export const [a] = await Promise.all([b]);', true],
    ['if (a) for await (const b of c) d(b);', true],
    ['const a = async () => await b;', false],
    ['class A { async b() { await c; } }', false],
  ])('see in %j whether the module waits', (text, waits) => {
    expect(awaitsAtTopLevel({ path: 'a.ts', text })).toBe(waits);
  });

  it.each(['document.title', 'Date.now()', 'Math.random()', 'new Date()', 'window["x"]', 'performance.now()'])(
    'see the impure call in %j, and not in a comment',
    (code) => {
      expect(codeOf(`const a = ${code};`)).toMatch(new RegExp(IMPURE.source));
      expect(codeOf(`const a = 1; // ${code}`)).not.toMatch(new RegExp(IMPURE.source));
    },
  );
});

describe('the guard of the looks', () => {
  it.each([
    'color: #fff;',
    "const ink = '#16212b';",
    'background: rgb(0 0 0 / 35%);',
    'font-size: 15px;',
    'font-size: 1.2rem;',
    'font: 700 16px serif;',
    '{ sizePx: 15, bold: true }',
    "ctx.fillStyle = 'white';",
    'color: red',
  ])('sees %j', (code) => {
    expect(code.match(LITERAL_LOOKS)).not.toBeNull();
  });

  it.each(['font-size: var(--type-small);', 'sizePx: TYPE_PX.read', 'background: Highlight;', "href='#main'"])(
    'passes %j over',
    (code) => {
      expect(code.match(LITERAL_LOOKS)).toBeNull();
    },
  );
});

describe('geometry/', () => {
  it('imports only itself, valibot, flatbush and robust-predicates; turf in one file alone', () => {
    expect(geometry.length).toBeGreaterThan(0);
    const bad = geometry.flatMap(({ path, text }) =>
      importsOf(text)
        .filter((name) => !mayImport(path, name))
        .map((name) => `${path}: ${name}`),
    );
    expect(bad).toEqual([]); // the list itself is the message
  });

  it('reads no clock, no chance, no page and no process', () => {
    const bad = geometry.flatMap(({ path, text }) =>
      [...codeOf(text).matchAll(IMPURE)].map(([hit]) => `${path}: ${hit}`),
    );
    expect(bad).toEqual([]);
  });
});

/** The second computation: worth something only while it shares nothing with the first but the plan and the table of rules. */
describe('geometry/recheck/', () => {
  const RECHECK = 'geometry/recheck';
  const mayShare = (path: string, name: string) => {
    if (name === '@turf/turf') return path === `${RECHECK}/planar-turf.ts`;
    const target = posix.join(posix.dirname(path), name);
    const shared = ['geometry/plan/model.ts', 'geometry/plan/kinds.ts'].includes(target);
    return name.startsWith('.') && (shared || [`${RECHECK}/`, 'geometry/rules/'].some((top) => target.startsWith(top)));
  };

  it.each([
    '../level/build-level.ts',
    '../check/types.ts',
    '../plane/ring.ts',
    '../planfile/parse.ts',
    'flatbush',
    '@turf/turf',
  ])('does not share %j', (name) => expect(mayShare(`${RECHECK}/bodies.ts`, name)).toBe(false));

  it('imports only itself, the plan, the table of rules, and turf in planar-turf.ts alone', () => {
    const own = geometry.filter(({ path }) => path.startsWith(`${RECHECK}/`));
    expect(own.length).toBeGreaterThan(0);
    const bad = own.flatMap(({ path, text }) =>
      importsOf(text)
        .filter((name) => !mayShare(path, name))
        .map((name) => `${path}: ${name}`),
    );
    expect(bad).toEqual([]);
  });

  it('is nothing that the first computation builds on', () => {
    const users = geometry.filter(
      ({ path, text }) => !path.startsWith(`${RECHECK}/`) && importsOf(text).some((name) => name.includes('/recheck/')),
    );
    expect(users.map(({ path }) => path)).toEqual(['geometry/messages/computed.ts']);
  });
});

/** Timing, results and quality: the same plan and the same now give the same answer. */
describe('src/protocol/', () => {
  const job = src.filter(({ path }) => path.startsWith('src/protocol/'));
  const mayImportJob = (path: string, name: string) =>
    staysInside('src/protocol', path, name) || staysInside('geometry', path, name) || name === 'ics';

  it('imports only itself, geometry and the writer of calendar files', () => {
    expect(job.length).toBeGreaterThan(0);
    const bad = job.flatMap(({ path, text }) =>
      importsOf(text)
        .filter((name) => !mayImportJob(path, name))
        .map((name) => `${path}: ${name}`),
    );
    expect(bad).toEqual([]);
  });

  it('reads no clock, no chance, no page and no process', () => {
    const bad = job.flatMap(({ path, text }) => [...codeOf(text).matchAll(IMPURE)].map(([hit]) => `${path}: ${hit}`));
    expect(bad).toEqual([]);
  });
});

describe('all sources', () => {
  it('import own files with their ending', () => {
    const bad = [...geometry, ...src].flatMap(({ path, text }) =>
      importsOf(text)
        .filter((name) => name.startsWith('.') && !/\.(tsx?|css|json|svg|png|woff2)(\?\w+)?$/.test(name))
        .map((name) => `${path}: ${name}`),
    );
    expect(bad).toEqual([]);
  });

  it('outside src/theme ask the tokens for every color and every size of type', () => {
    const styled = [...src, ...sourceFiles('src', /\.css$/)].filter(({ path }) => !path.startsWith('src/theme/'));
    const bad = styled.flatMap(({ path, text }) =>
      [...codeOf(text).matchAll(LITERAL_LOOKS)].map(([hit]) => `${path}: ${hit}`),
    );
    expect(bad).toEqual([]);
  });

  it('of the page never await at the top level of a module: WebKit then evaluates files ahead of what they import', () => {
    const page = [...geometry, ...src].filter(({ path }) => !path.startsWith('src/cli/'));
    expect(page.filter(awaitsAtTopLevel).map(({ path }) => path)).toEqual([]);
  });

  it('in src/ import no turf: the geometry wraps the few planar parts of it', () => {
    const bad = src
      .filter(({ text }) => importsOf(text).some((name) => name.startsWith('@turf/')))
      .map(({ path }) => path);
    expect(bad).toEqual([]);
  });
});
