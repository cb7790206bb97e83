// Draws the icons of the installed app from src/platform/offline/icons/icon.svg: `node tests/run/icons.mjs`. A test fails while they are stale.
import { readFileSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { Resvg } from '@resvg/resvg-js';

export const ICONS = new URL('../../src/platform/offline/icons/', import.meta.url);

/** Returns the picture files by name, drawn from the SVG. */
export function drawnIcons() {
  const svg = readFileSync(new URL('icon.svg', ICONS), 'utf8');
  // A system may cut a maskable icon to a circle of 80 %, so it has no rounded corners, and the drawing is in the middle.
  const maskable = svg
    .replace('viewBox="0 0 64 64"', 'viewBox="-8 -8 80 80"')
    .replace(/<rect [^>]*fill="([^"]+)"[^>]*\/>/, '<rect x="-8" y="-8" width="80" height="80" fill="$1"/>');
  const png = (/** @type {string} */ source, /** @type {number} */ width) =>
    new Resvg(source, { fitTo: { mode: 'width', value: width } }).render().asPng();
  return new Map([
    ['icon-192.png', png(svg, 192)],
    ['icon-512.png', png(svg, 512)],
    ['icon-maskable-512.png', png(maskable, 512)],
  ]);
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  for (const [name, bytes] of drawnIcons()) {
    writeFileSync(new URL(name, ICONS), bytes);
    process.stdout.write(`Wrote ${name}\n`);
  }
}
