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

/** Resolves from this file, because the command line may run in any folder. */
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

/** Returns the font files of the pages, for the PDF, decompressed: the library would decompress them again for every glyph. */
export function fontFiles(): FontFiles {
  const read = (weight: number) =>
    SUBSETS.map((subset) => new Uint8Array(woffToOpenType(readFileSync(fontPath(subset, weight, 'woff')))));
  files ??= { regular: read(400), bold: read(700) };
  return files;
}

let paths: readonly string[] | undefined;

/** Family name of the extended letters in the files for pictures: the library selects by family and weight, and has no subsets. */
export const FURTHER_FAMILY = 'Atkinson Hyperlegible More';

/** Returns paths of the same fonts as OpenType files: the library that makes pictures accepts nothing else. */
export function openTypePaths(): readonly string[] {
  paths ??= WEIGHTS.flatMap((weight) =>
    SUBSETS.map((subset) => openTypeFile(fontPath(subset, weight, 'woff'), subset === 'latin-ext')),
  );
  return paths;
}

/** Names the file by a hash of its source, so that a new font package gets a new file. Renames it when complete, for other processes. */
function openTypeFile(path: string, further: boolean): string {
  const woff = readFileSync(path);
  const packages = join(dirname(path), '..', '..', '..');
  const cache = join(packages, '.cache', 'stillspot', 'fonts');
  const hash = createHash('sha256').update(woff).digest('hex').slice(0, 16);
  const file = join(cache, `${hash}${further ? '-more' : ''}.ttf`);
  if (existsSync(file)) return file;
  mkdirSync(cache, { recursive: true });
  const unfinished = `${file}.${process.pid}`;
  const font = woffToOpenType(woff);
  writeFileSync(unfinished, further ? withFamily(font, 'Next', 'More') : font);
  renameSync(unfinished, file);
  return file;
}

/** Returns an OpenType font with a word in its names replaced by one of the same length. Table directory and name table: OpenType 1.9. */
function withFamily(font: Uint8Array, word: string, by: string): Uint8Array {
  const bytes = Buffer.from(font);
  for (let table = 0; table < bytes.readUInt16BE(4); table++) {
    const entry = 12 + 16 * table;
    if (bytes.toString('latin1', entry, entry + 4) !== 'name') continue;
    const names = bytes.subarray(bytes.readUInt32BE(entry + 8)).subarray(0, bytes.readUInt32BE(entry + 12));
    // UTF-16, high byte first, the encoding of names for Windows.
    const [from, to] = [word, by].map((text) => Buffer.from(text, 'utf16le').swap16());
    if (!from || !to) continue;
    for (let at = names.indexOf(from); at >= 0; at = names.indexOf(from, at + from.length)) to.copy(names, at);
  }
  return bytes;
}
