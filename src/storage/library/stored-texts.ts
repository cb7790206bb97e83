import { joinText, type SplitText, splitText, textHash } from '../long-texts.ts';
import type { LibraryWrite } from './database.ts';

/** Long texts of plans and versions in the store. Each is stored once, and deleted when nothing refers to it. */

export interface StoredText {
  readonly text: SplitText;
  /** `textHash` of the whole text. */
  readonly hash: string;
}

/** Splits a text and stores its long texts. */
export async function storeText(write: LibraryWrite, whole: string): Promise<StoredText> {
  const { text, longTexts } = splitText(whole);
  const names = new Map<string, string>();
  for (const [name, long] of longTexts) names.set(name, await storeLongText(write, name, long));
  return { text: { ...text, long: text.long.map((name) => names.get(name) ?? name) }, hash: textHash(whole) };
}

/** Stores a long text. Returns its name, which differs from `name` if another text is stored under that name. */
async function storeLongText(write: LibraryWrite, name: string, long: string): Promise<string> {
  const store = write.objectStore('longs');
  const there = await store.get(name);
  if (there === long) return name;
  if (there !== undefined) return storeLongText(write, `${name}+`, long);
  await store.put(long, name);
  return name;
}

/** Deletes long texts that no plan and no version refers to. Call it after the change that removed the references. */
export async function deleteUnusedTexts(write: LibraryWrite, names: readonly string[]): Promise<void> {
  for (const name of new Set(names)) {
    const [plans, versions] = await Promise.all([
      write.objectStore('texts').index('long').count(name),
      write.objectStore('versions').index('long').count(name),
    ]);
    if (plans + versions === 0) await write.objectStore('longs').delete(name);
  }
}

/** A source of long texts by name: the store, or a transaction on it. */
export interface LongSource {
  get(name: string): Promise<string | undefined>;
}

/** Returns the whole text; null if one of its long texts is missing. */
export async function wholeText(text: SplitText, source: LongSource): Promise<string | null> {
  const longTexts = new Map<string, string>();
  for (const name of new Set(text.long)) {
    const long = await source.get(name);
    if (long !== undefined) longTexts.set(name, long);
  }
  return joinText(text, longTexts);
}
