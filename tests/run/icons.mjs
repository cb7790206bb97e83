// Draws the icons of the installed app from src/offline/icons/icon.svg: `node tests/run/icons.mjs`.
import { readFileSync, writeFileSync } from 'node:fs';
import { Resvg } from '@resvg/resvg-js';

const FOLDER = new URL('../../src/offline/icons/', import.meta.url);
const svg = readFileSync(new URL('icon.svg', FOLDER), 'utf8');
/** A system may cut a maskable icon to a circle of 80 %: no corners of its own, and the drawing in the middle. */
const maskable = svg
  .replace('viewBox="0 0 64 64"', 'viewBox="-8 -8 80 80"')
  .replace(/<rect [^>]*\/>/, '<rect x="-8" y="-8" width="80" height="80" fill="#16212b"/>');

for (const [name, source, width] of /** @type {const} */ ([
  ['icon-192.png', svg, 192],
  ['icon-512.png', svg, 512],
  ['icon-maskable-512.png', maskable, 512],
])) {
  writeFileSync(new URL(name, FOLDER), new Resvg(source, { fitTo: { mode: 'width', value: width } }).render().asPng());
  process.stdout.write(`Wrote ${name}\n`);
}
