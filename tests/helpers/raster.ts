/** Sheets as pictures, drawn in Node with the font files that the app ships. */
import { mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Resvg } from '@resvg/resvg-js';
import { fontFile, woffToOpenType } from './woff.ts';

let fonts: readonly string[] | undefined;

/** The fonts as OpenType files in a folder for temporary files. */
export function fontPaths(): readonly string[] {
  if (fonts) return fonts;
  const folder = mkdtempSync(join(tmpdir(), 'stillspot-fonts-'));
  fonts = ([400, 700] as const).flatMap((weight) =>
    (['latin', 'latin-ext'] as const).map((subset) => {
      const file = join(folder, `${subset}-${weight}.ttf`);
      writeFileSync(file, woffToOpenType(fontFile(subset, weight)));
      return file;
    }),
  );
  return fonts;
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
