import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { posix } from 'node:path';
import { describe, expect, it } from 'vitest';

/** Folders that hold no text of ours, and in which other tests and programs write meanwhile. */
const SKIPPED = ['node_modules', 'dist', 'coverage', 'shots', '.git'];

function documentsIn(folder: string): string[] {
  return readdirSync(folder, { withFileTypes: true }).flatMap((entry) => {
    const path = posix.join(folder, entry.name);
    if (entry.isDirectory()) return SKIPPED.includes(entry.name) ? [] : documentsIn(path);
    return path.endsWith('.md') ? [path] : [];
  });
}

const documents = documentsIn('.');

/** A file or folder of the project in backticks: "src/state/store.ts", "geometry/level/". A star stands for any name. */
const PATH = /`((?:geometry|src|tests|samples)\/[\w./-]*)`/g;

function missingIn(path: string): string[] {
  const text = readFileSync(path, 'utf8');
  const named = [...text.matchAll(PATH)].map(([, name]) => name as string);
  return named.filter((name) => !existsSync(name)).map((name) => `${path}: ${name}`);
}

/** Paragraphs and list items; tables, headings and code are none. */
function paragraphsOf(text: string): string[] {
  return text
    .replace(/```[\s\S]*?```/g, '\n\n')
    .split(/\n\s*\n|\n(?=\s*(?:[-*]|\d+\.) )/)
    .map((each) => each.trim())
    .filter((each) => each && !/^[|#]/.test(each));
}

/** The folders that a document lists: the rows of its table of folders, or its list of folders in a block of code. */
function listedFolders(path: string): string[] {
  const text = readFileSync(path, 'utf8');
  const [table = ''] = /^\| folder .*\n(?:\|.*\n)+/m.exec(text) ?? [];
  const cells = [...table.matchAll(/^\| (`[^|]*)\|/gm)].flatMap(([, cell = '']) => [...cell.matchAll(/`([^`]+)\/`/g)]);
  const lines = text.matchAll(/^(\w+)\/ {2,}\S/gm);
  return [...cells, ...lines].map(([, name]) => posix.join(posix.dirname(path), name as string));
}

const foldersIn = (folder: string) =>
  readdirSync(folder, { withFileTypes: true })
    .filter((entry) => entry.isDirectory() && !entry.name.startsWith('.') && !SKIPPED.includes(entry.name))
    .map(({ name }) => posix.join(folder, name))
    .sort();

const wordsIn = (text: string) => text.split(/\s+/).length;

describe('the documents', () => {
  it('were found', () => {
    expect(documents).toEqual(expect.arrayContaining(['README.md', 'DEVELOPERS.md', 'geometry/README.md']));
  });

  it('name only files and folders that are there', () => {
    expect(documents.flatMap(missingIn)).toEqual([]);
  });

  it('link only to files that are there', () => {
    const broken = documents.flatMap((path) =>
      [...readFileSync(path, 'utf8').matchAll(/\]\((?!https?:|#)([^)#\s]+)/g)]
        .map(([, to]) => posix.join(posix.dirname(path), to as string))
        .filter((to) => !existsSync(to))
        .map((to) => `${path}: ${to}`),
    );
    expect(broken).toEqual([]);
  });
});

describe('a list of folders', () => {
  const lists = documents.filter((path) => listedFolders(path).length > 0);

  it('is in these documents', () => {
    expect(lists.toSorted()).toEqual([
      'DEVELOPERS.md',
      'geometry/README.md',
      'src/editor/README.md',
      'src/protocol/README.md',
      'src/ui/README.md',
      'tests/README.md',
    ]);
  });

  it.each(lists)('of %s names only folders that are there', (path) => {
    expect(listedFolders(path).filter((folder) => !existsSync(folder))).toEqual([]);
  });

  it.each(lists)('of %s names every folder, or all that are in it', (path) => {
    const listed = listedFolders(path);
    const isListed = (folder: string): boolean => {
      const inner = foldersIn(folder);
      return listed.includes(folder) || (inner.length > 0 && inner.every((each) => listed.includes(each)));
    };
    expect(foldersIn(posix.dirname(path)).filter((folder) => !isListed(folder))).toEqual([]);
  });
});

describe('DEVELOPERS.md', () => {
  const text = readFileSync('DEVELOPERS.md', 'utf8');

  it('has at most 120 lines', () => {
    expect(text.trimEnd().split('\n').length).toBeLessThanOrEqual(120);
  });

  it('has no paragraph of more than 60 words', () => {
    expect(paragraphsOf(text).filter((each) => wordsIn(each) > 60)).toEqual([]);
  });
});
