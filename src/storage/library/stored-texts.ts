import { joinText, type SplitText, splitText, textName } from '../long-texts.ts';
import type { LibraryWrite } from './database.ts';

/** The long texts of plans and versions in the store. Each lies there once, as long as anything needs it. */

export interface Settled {
  readonly text: SplitText;
  /** Name of the whole text. */
  readonly hash: string;
}

/** Splits a text and sees to it that its long texts lie in the store. */
export async function settleText(write: LibraryWrite, whole: string): Promise<Settled> {
  const { text, longs } = splitText(whole);
  const names = new Map<string, string>();
  for (const [name, long] of longs) names.set(name, await settleLong(write, name, long));
  return { text: { ...text, long: text.long.map((name) => names.get(name) ?? name) }, hash: textName(whole) };
}

/** The name under which it lies: another one where another text has taken the first. */
async function settleLong(write: LibraryWrite, name: string, long: string): Promise<string> {
  const store = write.objectStore('longs');
  const there = await store.get(name);
  if (there === long) return name;
  if (there !== undefined) return settleLong(write, `${name}+`, long);
  await store.put(long, name);
  return name;
}

/** Takes long texts out that no plan and no version needs any more. Call it after the change that let them go. */
export async function letGo(write: LibraryWrite, names: readonly string[]): Promise<void> {
  for (const name of new Set(names)) {
    const [plans, versions] = await Promise.all([
      write.objectStore('texts').index('long').count(name),
      write.objectStore('versions').index('long').count(name),
    ]);
    if (plans + versions === 0) await write.objectStore('longs').delete(name);
  }
}

/** Whatever hands out long texts by name: the store, or a change of it. */
export interface LongSource {
  get(name: string): Promise<string | undefined>;
}

/** The whole text; null where one of its long texts is gone. */
export async function wholeText(text: SplitText, source: LongSource): Promise<string | null> {
  const longs = new Map<string, string>();
  for (const name of new Set(text.long)) {
    const long = await source.get(name);
    if (long !== undefined) longs.set(name, long);
  }
  return joinText(text, longs);
}
