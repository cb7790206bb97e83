import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readFileSync, renameSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import { facesOf, withFaces } from '../../report/font-faces.ts';
import type { FontFiles } from '../../report/pdf/fonts.ts';
import { woffToOpenType } from './woff.ts';

const PACKAGE = '@fontsource/atkinson-hyperlegible-next';
const SUBSETS = ['latin', 'latin-ext'] as const;
const WEIGHTS = [400, 700] as const;

/** The command line may run in any folder: the files are found from where this code is. */
const { resolve } = createRequire(import.meta.url);

const fontPath = (subset: string, weight: number, ending: string): string =>
  resolve(`${PACKAGE}/files/atkinson-hyperlegible-next-${subset}-${weight}-normal.${ending}`);

/** Returns the SVG with the fonts that its text needs. */
export function withEmbeddedFont(svg: string): string {
  const faces = facesOf(svg).map((face) => {
    const bytes = readFileSync(fontPath(face.subset, face.weight, 'woff2'));
    return { face, data: `data:font/woff2;base64,${bytes.toString('base64')}` };
  });
  return withFaces(svg, faces);
}

let files: FontFiles | undefined;

/** Returns the font files of the pages, for the PDF. Decompressed: the library would do that again for every glyph. */
export function fontFiles(): FontFiles {
  const read = (weight: number) =>
    SUBSETS.map((subset) => new Uint8Array(woffToOpenType(readFileSync(fontPath(subset, weight, 'woff')))));
  files ??= { regular: read(400), bold: read(700) };
  return files;
}

let paths: readonly string[] | undefined;

/** Returns paths of the same fonts as OpenType files: the library that makes pictures accepts nothing else. */
export function openTypePaths(): readonly string[] {
  paths ??= WEIGHTS.flatMap((weight) => SUBSETS.map((subset) => openTypeFile(fontPath(subset, weight, 'woff'))));
  return paths;
}

/** Names the file by a hash of its source, for new font packages. Renames it at the end, so that other processes never see half a file. */
function openTypeFile(path: string): string {
  const woff = readFileSync(path);
  const packages = join(dirname(path), '..', '..', '..');
  const cache = join(packages, '.cache', 'stillspot', 'fonts');
  const file = join(cache, `${createHash('sha256').update(woff).digest('hex').slice(0, 16)}.ttf`);
  if (existsSync(file)) return file;
  mkdirSync(cache, { recursive: true });
  const unfinished = `${file}.${process.pid}`;
  writeFileSync(unfinished, woffToOpenType(woff));
  renameSync(unfinished, file);
  return file;
}
