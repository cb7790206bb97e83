import { readdirSync, readFileSync } from 'node:fs';
import { posix } from 'node:path';
import { describe, expect, it } from 'vitest';

interface SourceFile {
  /** From the project's top, with forward slashes. */
  readonly path: string;
  readonly text: string;
}

function sourceFiles(folder: string): SourceFile[] {
  return readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .map((name) => posix.join(folder, name.replaceAll('\\', '/')))
    .filter((path) => /\.tsx?$/.test(path))
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
  if (name === '@turf/turf') return path === 'geometry/turf.ts';
  return ['valibot', 'robust-predicates', 'flatbush'].includes(name);
}

/**
 * What geometry/ must not touch: the same plan gives the same answer, everywhere and at any time. A full stop needs a
 * letter behind it: a sentence about a window may end with one.
 */
const IMPURE =
  /\b(?:document|window|navigator|localStorage|indexedDB|process|globalThis)(?:\.\w|\[)|\bDate\.now\b|\bnew Date\(\s*\)|\bDate\(\s*\)|\bMath\.random\b|\bcrypto\.|\bperformance\.|\b(?:fetch|setTimeout|setInterval)\s*\(/g;

const geometry = sourceFiles('geometry');
const src = sourceFiles('src');

describe('the guards of this file', () => {
  it.each([
    ["import { a } from '../src/a.ts';", '../src/a.ts'],
    ["export * from 'react';", 'react'],
    ["const a = await import('konva');", 'konva'],
    ['import "zustand";', 'zustand'],
    ["import {\n  a,\n} from '@turf/turf';", '@turf/turf'],
    ["export type { A } from 'konva/x';", 'konva/x'],
    ["import a, { type B } from 'react';", 'react'],
  ])('see the import in %j', (text, name) => {
    expect(importsOf(text)).toEqual([name]);
    expect(mayImport('geometry/ring.ts', name)).toBe(false);
  });

  it.each(['document.title', 'Date.now()', 'Math.random()', 'new Date()', 'window["x"]', 'performance.now()'])(
    'see the impure call in %j, and not in a comment',
    (code) => {
      expect(codeOf(`const a = ${code};`)).toMatch(new RegExp(IMPURE.source));
      expect(codeOf(`const a = 1; // ${code}`)).not.toMatch(new RegExp(IMPURE.source));
    },
  );
});

describe('geometry/', () => {
  it('imports only itself, valibot, flatbush and robust-predicates; turf in turf.ts alone', () => {
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

describe('all sources', () => {
  it('import own files with their ending', () => {
    const bad = [...geometry, ...src].flatMap(({ path, text }) =>
      importsOf(text)
        .filter((name) => name.startsWith('.') && !/\.(tsx?|css|json|svg|png|woff2)(\?\w+)?$/.test(name))
        .map((name) => `${path}: ${name}`),
    );
    expect(bad).toEqual([]);
  });

  it('in src/ import no turf: the geometry wraps the few planar parts of it', () => {
    const bad = src
      .filter(({ text }) => importsOf(text).some((name) => name.startsWith('@turf/')))
      .map(({ path }) => path);
    expect(bad).toEqual([]);
  });
});
