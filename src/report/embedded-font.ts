/** Embeds the sheet's font in the SVG: an SVG used as an image loads no other files. */
import latin400 from '@fontsource/atkinson-hyperlegible-next/files/atkinson-hyperlegible-next-latin-400-normal.woff2?url';
import latin700 from '@fontsource/atkinson-hyperlegible-next/files/atkinson-hyperlegible-next-latin-700-normal.woff2?url';
import extended400 from '@fontsource/atkinson-hyperlegible-next/files/atkinson-hyperlegible-next-latin-ext-400-normal.woff2?url';
import extended700 from '@fontsource/atkinson-hyperlegible-next/files/atkinson-hyperlegible-next-latin-ext-700-normal.woff2?url';

import { facesOf, withFaces } from './font-faces.ts';

const ADDRESSES = {
  latin: { 400: latin400, 700: latin700 },
  'latin-ext': { 400: extended400, 700: extended700 },
} as const;

const loaded = new Map<string, Promise<string>>();

/** Returns the SVG with the font faces that its text needs. Rejects with a sentence for people if a font file cannot be loaded. */
export async function withEmbeddedFont(svg: string): Promise<string> {
  const faces = facesOf(svg).map(async (face) => ({ face, data: await dataOf(ADDRESSES[face.subset][face.weight]) }));
  return withFaces(svg, await Promise.all(faces));
}

/** Cached for the session; a failure is not, so that the next try may succeed. */
function dataOf(url: string): Promise<string> {
  const known = loaded.get(url);
  if (known) return known;
  const wanted = fetchData(url);
  loaded.set(url, wanted);
  wanted.catch(() => loaded.delete(url));
  return wanted;
}

async function fetchData(url: string): Promise<string> {
  const response = await fetch(url).catch(() => null);
  if (!response?.ok) {
    throw new Error(
      'The font of the sheet could not be loaded, so no picture was made. Reload the page and try again.',
    );
  }
  const bytes = new Uint8Array(await response.arrayBuffer());
  let text = '';
  // In pieces: the number of arguments of a call is limited.
  for (let i = 0; i < bytes.length; i += 8192) text += String.fromCharCode(...bytes.subarray(i, i + 8192));
  return `data:font/woff2;base64,${btoa(text)}`;
}
