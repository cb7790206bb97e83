/** The font files of the pages in the browser. */
import latin400 from '@fontsource/atkinson-hyperlegible-next/files/atkinson-hyperlegible-next-latin-400-normal.woff?url';
import latin700 from '@fontsource/atkinson-hyperlegible-next/files/atkinson-hyperlegible-next-latin-700-normal.woff?url';
import extended400 from '@fontsource/atkinson-hyperlegible-next/files/atkinson-hyperlegible-next-latin-ext-400-normal.woff?url';
import extended700 from '@fontsource/atkinson-hyperlegible-next/files/atkinson-hyperlegible-next-latin-ext-700-normal.woff?url';
import type { FontFiles } from './fonts.ts';

/** Returns the font files. Rejects with a sentence for people if one cannot be loaded. */
export async function loadFontFiles(): Promise<FontFiles> {
  const [regular, bold] = await Promise.all([
    Promise.all([latin400, extended400].map(bytesOf)),
    Promise.all([latin700, extended700].map(bytesOf)),
  ]);
  return { regular, bold };
}

async function bytesOf(url: string): Promise<Uint8Array> {
  const response = await fetch(url).catch(() => null);
  if (!response?.ok) {
    throw new Error('The font of the pages could not be loaded, so no PDF was made. Reload the page and try again.');
  }
  return new Uint8Array(await response.arrayBuffer());
}
