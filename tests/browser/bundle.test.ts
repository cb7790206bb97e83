import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import { expect, inject, it } from 'vitest';
import { buildTo } from './build-site.ts';

/** What a tablet on a poor line waits for: page, scripts and style sheets, compressed, until the page shows, and until the sheet is drawn. */
const MOST_BYTES = { page: 250_000, sheet: 300_000 } as const;

const folder = () => inject('siteFolder');
const page = () => readFileSync(join(folder(), 'index.html'), 'utf8');
const LINKED = /<(?:script|link)\b[^>]*?(?:src|href)="\.\/(assets\/[^"]+\.(?:js|css))"[^>]*>/g;
const linked = () =>
  [...page().matchAll(LINKED)].map(([tag, name = '']) => ({ name, preloaded: tag.includes('preload') }));
const sizes = (files: readonly { readonly name: string }[]) =>
  files.map(({ name }) => [name, gzipSync(readFileSync(join(folder(), name))).length] as const);
const total = (each: readonly (readonly [string, number])[]) =>
  each.reduce((sum, [, size]) => sum + size, gzipSync(page()).length);

it('the page shows after at most 250 kB compressed; the rest is loaded when it is needed', () => {
  const files = sizes(linked().filter(({ preloaded }) => !preloaded));
  // One script at least, one style sheet, and what the script needs at once.
  expect(files.length).toBeGreaterThan(1);
  expect(total(files), files.join(' ')).toBeLessThanOrEqual(MOST_BYTES.page);
});

it('the sheet is asked for with the page, and drawn after at most 300 kB compressed', () => {
  const files = sizes(linked());
  expect(files.some(([name]) => name.startsWith('assets/konva'))).toBe(true);
  expect(total(files), files.join(' ')).toBeLessThanOrEqual(MOST_BYTES.sheet);
});

it('the app that users get has no hook for tests on its window', () => {
  const users = mkdtempSync(join(tmpdir(), 'stillspot-users-'));
  try {
    buildTo(users, [], 'production');
    const holds = (site: string) =>
      readdirSync(join(site, 'assets'))
        .filter((name) => name.endsWith('.js'))
        .filter((name) => readFileSync(join(site, 'assets', name), 'utf8').includes('__stillspot'));
    expect(holds(users)).toEqual([]);
    expect(holds(folder())).not.toEqual([]);
  } finally {
    rmSync(users, { recursive: true, force: true });
  }
});
