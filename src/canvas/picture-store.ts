import { create } from 'zustand';

/** Pictures ready to be drawn, by their data address. Decoding takes a tenth of a second: done once, beside the page's work. */
export const usePictures = create<{ readonly ready: ReadonlyMap<string, ImageBitmap> }>()(() => ({ ready: new Map() }));

/** So many are kept: a picture for each level of a house, and a few that undo may bring back. */
const MOST = 8;
const asked = new Set<string>();

/** The picture, or null while it is being read; it then comes by itself. */
export function pictureOf(image: string): ImageBitmap | null {
  const { ready } = usePictures.getState();
  const found = ready.get(image);
  if (!found && !asked.has(image)) {
    asked.add(image);
    void decode(image);
  }
  return found ?? null;
}

async function decode(image: string): Promise<void> {
  try {
    const bitmap = await createImageBitmap(await (await fetch(image)).blob());
    usePictures.setState(({ ready }) => ({ ready: new Map([...[...ready].slice(-MOST + 1), [image, bitmap]]) }));
  } catch {
    // A picture in a file that no browser reads: the rest of the plan is there, and the panel names the picture.
  }
}
