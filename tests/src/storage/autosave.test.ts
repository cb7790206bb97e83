import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import type { WriteResult } from '../../../src/storage/library/plans.ts';

/** A store that takes as long as the test wants: each write waits until it is let through. */
const writes: ((result: WriteResult) => void)[] = [];
vi.mock('../../../src/storage/library/plans.ts', () => ({
  writeWork: () => new Promise<WriteResult>((done) => writes.push(done)),
}));

import { useAppStore } from '../../../src/state/store.ts';
import { startAutosave } from '../../../src/storage/autosave.ts';
import { useLibrary } from '../../../src/storage/library-state.ts';

let stop: () => void;

beforeEach(() => {
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
  writes[n]?.({ ok: true });
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
