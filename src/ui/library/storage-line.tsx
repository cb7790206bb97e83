import { useEffect, useState } from 'react';
import { useLibrary } from '../../storage/library-state.ts';
import { readSetting, writeSetting } from '../../storage/settings.ts';

/** Whether the browser keeps the plans until they are deleted (persistent storage). Null if the browser does not say. */
type Promised = boolean | null;

/** Number of plans that the library is designed and measured for. */
const MOST_PLANS = 2000;

interface Room {
  /** Bytes; null if the browser does not report it. */
  readonly used: number | null;
  readonly free: number | null;
}

/** Shows the size of the plans, and whether the browser promises to keep them, which is asked once there are plans. */
export function StorageLine({ count }: { readonly count: number }) {
  const hasPlans = count > 0;
  const news = useLibrary(({ changes }) => changes);
  const [room, setRoom] = useState<Room>({ used: null, free: null });
  const [promised, setPromised] = useState<Promised>();
  // biome-ignore lint/correctness/useExhaustiveDependencies: the count of news says when to look again
  useEffect(() => {
    void roomNow().then(setRoom);
  }, [news]);
  useEffect(() => {
    if (hasPlans) void promisedSoFar().then(setPromised);
  }, [hasPlans]);
  const ask = () => void askToKeep().then(setPromised);
  return (
    <section className="stock" aria-label="Storage in this browser">
      <p>
        {room.used !== null && `Plans and their versions take ${bytesWords(room.used)} in this browser. `}
        {room.used !== null && room.free !== null && `${bytesWords(room.free)} more fits. `}
        {promised === true && 'The browser keeps them until you delete them.'}
        {promised === false &&
          'The browser may delete them when this device runs short of storage. Export all plans to one file now and then.'}
      </p>
      {count > MOST_PLANS && (
        <p>
          There are {count.toLocaleString('en-US')} plans here. This page is made for at most{' '}
          {MOST_PLANS.toLocaleString('en-US')}: everything works, but slower. Export the old ones, then delete them.
        </p>
      )}
      <p>
        Plans, settings and a copy of Stillspot for use without a network are stored in this browser on this device, and
        nowhere else: nothing is sent. To erase a plan, delete it, then open “Deleted plans” and delete it for good. To
        erase everything, clear the data of this site in the settings of the browser.
      </p>
      <a className="text-button" href="./licenses.txt" target="_blank" rel="noreferrer">
        Licenses of the software in it
      </a>
      {promised === false && (
        <button type="button" className="text-button" onClick={ask}>
          Ask the browser to keep them
        </button>
      )}
    </section>
  );
}

async function roomNow(): Promise<Room> {
  try {
    const { usage, quota } = await navigator.storage.estimate();
    return { used: usage ?? null, free: quota === undefined ? null : Math.max(0, quota - (usage ?? 0)) };
  } catch {
    return { used: null, free: null };
  }
}

/** Requests persistent storage only once, when a library with plans is first shown, because some browsers ask the user. */
async function promisedSoFar(): Promise<Promised> {
  try {
    if (await navigator.storage.persisted()) return true;
    if ((await readSetting('asked-to-keep')) === true) return false;
    await writeSetting('asked-to-keep', true);
    return await askToKeep();
  } catch {
    return null;
  }
}

async function askToKeep(): Promise<Promised> {
  try {
    return await navigator.storage.persist();
  } catch {
    return null;
  }
}

/** Returns a size in words: "3.2 MB". */
function bytesWords(bytes: number): string {
  if (bytes < 1e6) return `${Math.max(1, Math.round(bytes / 1e3))} kB`;
  if (bytes < 1e9) return `${(bytes / 1e6).toFixed(bytes < 1e7 ? 1 : 0)} MB`;
  return `${(bytes / 1e9).toFixed(bytes < 1e10 ? 1 : 0)} GB`;
}
