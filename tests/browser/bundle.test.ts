import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import { expect, inject, it } from 'vitest';

/** What a tablet on a poor line waits for: page, scripts and style sheets that are needed before the first picture. */
const LIMIT = 250_000;

it('the start of the app is at most 250 kB compressed; the rest is loaded when it is needed', () => {
  const folder = inject('siteFolder');
  const html = readFileSync(join(folder, 'index.html'), 'utf8');
  const files = [...html.matchAll(/(?:src|href)="\.\/(assets\/[^"]+\.(?:js|css))"/g)].map(([, name = '']) => name);
  // One script at least, one style sheet, and what the script needs at once.
  expect(files.length).toBeGreaterThan(1);
  const sizes = files.map((name) => [name, gzipSync(readFileSync(join(folder, name))).length] as const);
  const total = sizes.reduce((sum, [, size]) => sum + size, gzipSync(html).length);
  expect(total, sizes.map(([name, size]) => `${name} ${size}`).join(', ')).toBeLessThanOrEqual(LIMIT);
});
