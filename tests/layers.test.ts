import { readdirSync, readFileSync } from 'node:fs';
import { posix } from 'node:path';
import { describe, expect, it } from 'vitest';

/*
 * Who may import whom: a folder imports itself and what its row names, and every row names rows above it alone. Types count as much as
 * code.
 */
const GEOMETRY = {
  plane: [],
  units: ['plane'],
  plan: ['plane'],
  rules: ['plan', 'plane'],
  planfile: ['plan', 'plane', 'rules', 'units'],
  arrangement: ['plane'],
  level: ['arrangement', 'plan', 'plane'],
  sun: ['arrangement', 'level', 'plan', 'plane', 'planfile'],
  check: ['level', 'plan', 'plane', 'rules', 'sun'],
  region: ['arrangement', 'check', 'level', 'plan', 'plane', 'rules'],
  snap: ['check', 'level', 'plan', 'plane'],
  dimension: ['level', 'plan', 'plane', 'snap'],
  search: ['arrangement', 'check', 'dimension', 'level', 'plan', 'plane', 'region', 'rules', 'snap'],
  recheck: ['plan', 'rules'],
  messages: ['check', 'dimension', 'level', 'plan', 'plane', 'recheck', 'region', 'rules', 'search', 'snap', 'units'],
  edit: ['check', 'dimension', 'level', 'messages', 'plan', 'plane', 'planfile', 'snap', 'sun', 'units'],
} satisfies Readonly<Record<string, readonly string[]>>;

/** Every folder of src/ may import all of geometry/. What stands beside the folders (app.tsx, main.tsx) puts them together. */
const SRC = {
  theme: [],
  drawing: ['theme'],
  protocol: [],
  advice: ['protocol'],
  platform: ['theme'],
  state: ['advice', 'platform', 'protocol', 'theme'],
  report: ['drawing', 'protocol', 'theme'],
  'quick-card': ['advice', 'drawing', 'protocol', 'report', 'state', 'theme'],
  storage: ['drawing', 'protocol', 'report', 'state', 'theme'],
  editor: ['advice', 'drawing', 'platform', 'state', 'theme'],
  commands: ['advice', 'editor', 'platform', 'report', 'state', 'storage'],
  ui: ['advice', 'commands', 'editor', 'platform', 'protocol', 'quick-card', 'report', 'state', 'storage', 'theme'],
  cli: ['protocol', 'report'],
} satisfies Readonly<Record<string, readonly string[]>>;

/** Rings of files that should not be. */
const RINGS: readonly string[] = [];

const TABLE = new Map<string, readonly string[]>([
  ...Object.entries(GEOMETRY).map(
    ([folder, row]) => [`geometry/${folder}`, row.map((to) => `geometry/${to}`)] as const,
  ),
  ...Object.entries(SRC).map(([folder, row]) => [`src/${folder}`, row.map((to) => `src/${to}`)] as const),
]);

interface Arrow {
  readonly from: string;
  readonly to: string;
}

/** Every import of one own file by another: statements, exports from, dynamic imports, workers. */
function arrowsOf(path: string): Arrow[] {
  const text = readFileSync(path, 'utf8');
  const names = [...text.matchAll(/(?:\bfrom\s+|\bimport\s*\(?\s*|new URL\(\s*)(['"])(\.[^'"]+)\1/g)].map(
    ([, , name]) => name ?? '',
  );
  return names
    .map((name) => ({ from: path, to: posix.join(posix.dirname(path), name.replace(/\?.*$/, '')) }))
    .filter(({ to }) => /\.tsx?$/.test(to));
}

const files = ['geometry', 'src'].flatMap((top) =>
  readdirSync(top, { recursive: true, encoding: 'utf8' })
    .map((name) => posix.join(top, name.replaceAll('\\', '/')))
    .filter((path) => /\.tsx?$/.test(path)),
);
const arrows = files.flatMap(arrowsOf);
const folderOf = (path: string) => posix.dirname(path).split('/').slice(0, 2).join('/');

function isAllowed({ from, to }: Arrow): boolean {
  const [here, there] = [folderOf(from), folderOf(to)];
  if (here === there || here === 'src') return true;
  if (here.startsWith('src/') && there.startsWith('geometry/')) return true;
  return TABLE.get(here)?.includes(there) === true;
}

/** Files that import one another in a ring, types counted: strongly connected components (Tarjan 1972) of more than one file. */
function loops(): string[][] {
  const next = new Map(files.map((file) => [file, arrows.filter(({ from }) => from === file).map(({ to }) => to)]));
  const order = new Map<string, number>();
  const low = new Map<string, number>();
  const open: string[] = [];
  const found: string[][] = [];
  const visit = (file: string): number => {
    order.set(file, order.size);
    low.set(file, order.size - 1);
    open.push(file);
    for (const to of next.get(file) ?? []) {
      if (!order.has(to)) low.set(file, Math.min(low.get(file) as number, visit(to)));
      else if (open.includes(to)) low.set(file, Math.min(low.get(file) as number, order.get(to) as number));
    }
    if (low.get(file) === order.get(file)) {
      const ring = open.splice(open.indexOf(file));
      if (ring.length > 1) found.push(ring.sort());
    }
    return low.get(file) as number;
  };
  for (const file of files) if (!order.has(file)) visit(file);
  return found;
}

describe('the table of layers', () => {
  it('has a row for every folder, and no folder that is not there', () => {
    const folders = new Set(files.map(folderOf));
    folders.delete('src');
    expect([...TABLE.keys()].sort()).toEqual([...folders].sort());
  });

  it('stands in DEVELOPERS.md in the same order', () => {
    const document = readFileSync('DEVELOPERS.md', 'utf8');
    expect(document).toContain(`geometry/  ${Object.keys(GEOMETRY).join('  ')}\n`);
    expect(document).toContain(`src/       ${Object.keys(SRC).join('  ')} `);
  });

  it('names in each row only rows above it: no knot of folders can arise', () => {
    const above = new Set<string>();
    for (const [folder, row] of TABLE) {
      expect({ folder, below: row.filter((to) => !above.has(to)) }).toEqual({ folder, below: [] });
      above.add(folder);
    }
  });
});

describe('imports', () => {
  const wrong = arrows.filter((arrow) => !isAllowed(arrow)).map(({ from, to }) => `${from} -> ${to}`);

  it('were found', () => {
    expect(arrows.length).toBeGreaterThan(2 * files.length);
  });

  it('run where the table says', () => {
    expect(wrong).toEqual([]); // the list itself is the message
  });

  it('run in no ring from file to file but those that are listed, and no ring is listed that is gone', () => {
    expect(
      loops()
        .map((ring) => ring.join(' '))
        .sort(),
    ).toEqual([...RINGS].sort());
  });
});
