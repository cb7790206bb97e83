/** Renders pages to pixels in Node, with the fonts of the app. */
import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readFileSync, renameSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { Resvg } from '@resvg/resvg-js';
import { fontFile, woffToOpenType } from './woff.ts';

/** Cache folder, next to the bundles of the command line. */
const CACHE = join('node_modules', '.cache', 'stillspot', 'fonts');

let fonts: readonly string[] | undefined;

/** Returns the fonts as OpenType files: the rendering library accepts nothing else. */
export function fontPaths(): readonly string[] {
  fonts ??= ([400, 700] as const).flatMap((weight) =>
    (['latin', 'latin-ext'] as const).map((subset) => openTypeFile(fontFile(subset, weight))),
  );
  return fonts;
}

/** Names the file by a hash of its source, for new font packages. Renames it at the end, so that other processes never see half a file. */
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
  /** RGBA of each pixel, 0 to 255. */
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
