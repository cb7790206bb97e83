/** The sheet's font inside the SVG: a picture that is drawn from an SVG loads nothing else. */
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

/** The SVG with the faces that its text needs. Rejects with a sentence when a font file cannot be had. */
export async function withEmbeddedFont(svg: string): Promise<string> {
  const faces = facesOf(svg).map(async (face) => ({ face, data: await dataOf(ADDRESSES[face.subset][face.weight]) }));
  return withFaces(svg, await Promise.all(faces));
}

/** Once a session; a failure is not cached, so that the next try may succeed. */
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
  // In pieces: a call takes only so many arguments.
  for (let i = 0; i < bytes.length; i += 8192) text += String.fromCharCode(...bytes.subarray(i, i + 8192));
  return `data:font/woff2;base64,${btoa(text)}`;
}
