/** Sheets as pictures, drawn in Node with the font files that the app ships. */
import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readFileSync, renameSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { Resvg } from '@resvg/resvg-js';
import { fontFile, woffToOpenType } from './woff.ts';

/** Kept from run to run, beside the bundles of the command line. */
const CACHE = join('node_modules', '.cache', 'stillspot', 'fonts');

let fonts: readonly string[] | undefined;

/** The fonts as OpenType files: the drawing library reads no other form, and only from files. */
export function fontPaths(): readonly string[] {
  fonts ??= ([400, 700] as const).flatMap((weight) =>
    (['latin', 'latin-ext'] as const).map((subset) => openTypeFile(fontFile(subset, weight))),
  );
  return fonts;
}

/** Named by what it was made of, so that a new font package makes new ones. Renamed at the end: another process sees all of it or none. */
function openTypeFile(woff: string): string {
  const file = join(CACHE, `${createHash('sha256').update(readFileSync(woff)).digest('hex').slice(0, 16)}.ttf`);
  if (existsSync(file)) return file;
  mkdirSync(CACHE, { recursive: true });
  const unfinished = `${file}.${process.pid}`;
  writeFileSync(unfinished, woffToOpenType(woff));
  renameSync(unfinished, file);
  return file;
}

export interface Picture {
  readonly width: number;
  readonly height: number;
  /** Red, green, blue, opacity of each pixel, 0 to 255. */
  readonly pixels: Buffer;
  readonly png: Buffer;
}

/** @param width px */
export function rasterise(svg: string, width: number): Picture {
  const image = new Resvg(svg, {
    fitTo: { mode: 'width', value: width },
    font: { loadSystemFonts: false, fontFiles: [...fontPaths()], defaultFontFamily: 'Atkinson Hyperlegible Next' },
  }).render();
  return { width: image.width, height: image.height, pixels: image.pixels, png: image.asPng() };
}
