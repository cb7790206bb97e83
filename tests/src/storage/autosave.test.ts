import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import type { WriteResult } from '../../../src/storage/library/plans.ts';

/** A store that takes as long as the test wants: each write waits until it is let through. */
const writes: ((result: WriteResult | Promise<WriteResult>) => void)[] = [];
const savedAts: number[] = [];
vi.mock('../../../src/storage/library/plans.ts', () => ({
  writeWork: ({ savedAt }: { savedAt: number }) => {
    savedAts.push(savedAt);
    return new Promise<WriteResult>((done) => writes.push(done));
  },
}));

/** What was kept as versions of the plan. */
const versions: string[] = [];
vi.mock('../../../src/storage/library/versions.ts', () => ({
  keepTextAsVersion: async (_: string, text: string) => versions.push(text) > 0,
}));

import { useAppStore } from '../../../src/state/store.ts';
import { keepHeld, startAutosave } from '../../../src/storage/autosave.ts';
import { useLibrary } from '../../../src/storage/library-state.ts';
import { textHash } from '../../../src/storage/long-texts.ts';
import { planText } from '../../../src/storage/open-plan.ts';

let stop: () => void;

/** The line to the other tabs. */
class Channel {
  static last: Channel | undefined;
  onmessage: ((event: { readonly data: unknown }) => void) | null = null;
  constructor() {
    Channel.last = this;
  }
  postMessage() {}
  close() {}
}

beforeEach(() => {
  vi.stubGlobal('BroadcastChannel', Channel);
  versions.length = 0;
  writes.length = 0;
  savedAts.length = 0;
  vi.useFakeTimers();
  const history = { replaceState: () => undefined, pushState: () => undefined };
  vi.stubGlobal('window', Object.assign(new EventTarget(), { history, location: new URL('http://localhost/') }));
  vi.stubGlobal('document', new EventTarget());
  stop = startAutosave();
});

afterEach(() => {
  stop();
  vi.unstubAllGlobals();
  vi.useRealTimers();
});

const titled = (title: string) => {
  const { plan } = useAppStore.getState();
  useAppStore.setState({ plan: { ...plan, title } });
};
const letThrough = async (n: number) => {
  writes[n]?.({ ok: true, hash: '' });
  await vi.advanceTimersByTimeAsync(0);
};
const saveStatus = () => useLibrary.getState().saveStatus.state;

describe('the save status of the open plan', () => {
  it('says "saved" only when the last change is in the store, however slow the store is', async () => {
    titled('one');
    await vi.advanceTimersByTimeAsync(40);
    expect(writes).toHaveLength(1);
    titled('two');
    // The second write waits behind the first: no timer runs any more, and yet there is something to save.
    await vi.advanceTimersByTimeAsync(1000);
    await letThrough(0);
    expect(writes).toHaveLength(2);
    expect(saveStatus()).toBe('saving');
    await letThrough(1);
    expect(saveStatus()).toBe('saved');
  });
});

/** Every write is let through at once. */
const atOnce = async (ms: number) => {
  await vi.advanceTimersByTimeAsync(ms);
  for (const done of writes) done({ ok: true, hash: '' });
  await vi.advanceTimersByTimeAsync(0);
};

describe('saving while the plan keeps changing', () => {
  it('writes three or four times a second while a key is held: no change waits longer than that', async () => {
    const SECONDS = 10;
    for (let repeat = 0; repeat < SECONDS * 30; repeat++) {
      titled(`held ${repeat}`);
      await atOnce(1000 / 30);
    }
    expect(writes.length).toBeGreaterThanOrEqual(3 * SECONDS);
    expect(writes.length).toBeLessThanOrEqual(4 * SECONDS);
  });

  it('goes on after a write that fails in a way of its own, and says so', async () => {
    titled('before');
    await vi.advanceTimersByTimeAsync(2000);
    writes.at(-1)?.(Promise.reject(new Error('torn')));
    await vi.advanceTimersByTimeAsync(0);
    expect(saveStatus()).toBe('failed');
    const before = writes.length;
    titled('after');
    await atOnce(2000);
    expect(writes.length).toBeGreaterThan(before);
    expect(saveStatus()).toBe('saved');
  });

  it('never writes a time that is before the last one, also when the clock is set back', async () => {
    titled('at noon');
    await atOnce(2000);
    vi.setSystemTime(Date.now() - 86_400_000);
    titled('the day before');
    await atOnce(2000);
    titled('and on');
    await atOnce(2000);
    const sorted = [...savedAts].sort((a, b) => a - b);
    expect(savedAts.length).toBeGreaterThanOrEqual(3);
    expect(savedAts).toEqual([...new Set(sorted)]);
  });

  it('copies what it must not write every 2 s while another tab holds the plan', async () => {
    const stored = new Map<string, string>();
    vi.stubGlobal('localStorage', {
      setItem: (key: string, value: string) => stored.set(key, value),
      removeItem: (key: string) => stored.delete(key),
    });
    titled('mine');
    await atOnce(2000);
    useLibrary.setState({ saveStatus: { state: 'held', at: 1 } });
    for (let repeat = 0; repeat < 100; repeat++) {
      titled(`held up ${repeat}`);
      await vi.advanceTimersByTimeAsync(33);
    }
    const [copy = ''] = stored.values();
    expect(copy).toMatch(/held up [89]\d/);
    expect(JSON.parse(copy)).toMatchObject({ held: true });
    useLibrary.setState({ saveStatus: { state: 'resting' } });
  });
});

describe('a change that another tab has overtaken', () => {
  beforeEach(async () => {
    titled('saved');
    await atOnce(2000);
  });
  afterEach(() => useLibrary.setState({ saveStatus: { state: 'resting' } }));

  it('while it was being written is kept as a version before the other plan is shown', async () => {
    titled('mine');
    await vi.advanceTimersByTimeAsync(400);
    writes.at(-1)?.({ ok: false, other: 7 });
    await vi.advanceTimersByTimeAsync(0);
    expect(saveStatus()).toBe('held');
    expect(await keepHeld()).toBe(true);
    expect(versions.map((text) => JSON.parse(text).title)).toEqual(['mine']);
  });

  it('before it was written, likewise', async () => {
    titled('mine too');
    Channel.last?.onmessage?.({ data: { id: useLibrary.getState().openId, savedAt: 7 } });
    expect(saveStatus()).toBe('held');
    expect(await keepHeld()).toBe(true);
    expect(versions.map((text) => JSON.parse(text).title)).toEqual(['mine too']);
  });

  it('is none where the other tab has only selected something: nothing is held up', async () => {
    const { plan } = useAppStore.getState();
    const hash = textHash(planText(plan));
    const { openId: id } = useLibrary.getState();
    Channel.last?.onmessage?.({ data: { id, savedAt: 7, hash } });
    expect(saveStatus()).toBe('saved');
    // What is not written yet is another matter.
    titled('mine');
    Channel.last?.onmessage?.({ data: { id, savedAt: 8, hash } });
    expect(saveStatus()).toBe('held');
  });

  it('is none where all was written before', async () => {
    Channel.last?.onmessage?.({ data: { id: useLibrary.getState().openId, savedAt: 7 } });
    expect(await keepHeld()).toBe(true);
    expect(versions).toEqual([]);
  });
});
