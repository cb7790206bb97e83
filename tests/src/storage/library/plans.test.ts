import '../../../helpers/fake-store.ts';
import { readFileSync } from 'node:fs';
import { IDBFactory } from 'fake-indexeddb';
import { beforeEach, describe, expect, it, vi } from 'vitest';
import type { Plan } from '../../../../geometry/plan/model.ts';
import { parsePlan } from '../../../../geometry/planfile/parse.ts';
import { writePlan } from '../../../../geometry/planfile/write.ts';
import { libraryAsFile, mergePlans } from '../../../../src/storage/library/backup.ts';
import { closeDatabase, database } from '../../../../src/storage/library/database.ts';
import { readLibraryFile } from '../../../../src/storage/library/library-file.ts';
import { destroyOutlived } from '../../../../src/storage/library/old-trash.ts';
import {
  destroy,
  outlived,
  readSummaries,
  readWork,
  setTrashed,
  type Work,
  writeWork,
} from '../../../../src/storage/library/plans.ts';
import { NO_VIEW } from '../../../../src/storage/library/records.ts';
import { keepTextAsVersion, readVersions } from '../../../../src/storage/library/versions.ts';

const read = parsePlan(readFileSync('samples/01-plain-basement.plan.json', 'utf8'));
if (!read.ok) throw new Error('the sample is no plan');
const SAMPLE = read.plan;
const MINUTE = 60_000;
const NOON = Date.UTC(2026, 10, 25, 12);

/** The sample under another title, with a picture where one is given. */
function titled(title: string, picture = ''): Plan {
  return { ...SAMPLE, title, ...(picture ? { sketch: picture } : {}) };
}
const picture = (sign: string) => `data:image/png;base64,${sign.repeat(8000)}`;
function work(plan: Plan, given: Partial<Work> = {}): Work {
  return { id: 'p', plan, text: writePlan(plan), savedAt: NOON, tab: 'one', view: NO_VIEW, ...given };
}
const titles = async () => (await readSummaries()).map(({ title }) => title).sort();
const pictureCount = async () => (await database()).count('longs');

beforeEach(async () => {
  await closeDatabase();
  globalThis.indexedDB = new IDBFactory();
});

describe('the open plan', () => {
  it('reads back as it was written, with its picture stored apart', async () => {
    const plan = titled('With a picture', picture('A'));
    expect(await writeWork(work(plan), null)).toMatchObject({ ok: true });
    expect(await readWork('p')).toMatchObject({ text: writePlan(plan), savedAt: NOON });
    expect(JSON.stringify(await (await database()).get('texts', 'p')).length).toBeLessThan(10_000);
    expect(await pictureCount()).toBe(1);
  });

  it('of one tab is never written over by another that has not seen it', async () => {
    await writeWork(work(titled('First')), null);
    const second = work(titled('Second'), { tab: 'two', savedAt: NOON + 1 });
    expect(await writeWork(second, null)).toEqual({ ok: false, other: NOON });
    expect(await titles()).toEqual(['First']);
    // It has seen what lies there, so the next writing is its own.
    expect(await writeWork(second, NOON)).toMatchObject({ ok: true });
  });

  it('has in its summary what its next date depends on; without the code that reads it, start and end, and the rest later', async () => {
    const summary = async () => (await readSummaries())[0];
    vi.doMock('../../../../src/storage/library/summary.ts', () => {
      throw new Error('no network');
    });
    vi.resetModules();
    const fresh = await import('../../../../src/storage/library/plans.ts');
    const start = '2026-11-24T09:00:00-05:00';
    const plan: Plan = { ...SAMPLE, visit: { ...SAMPLE.visit, start } };
    expect(await fresh.writeWork(work(plan), null)).toMatchObject({ ok: true });
    expect(await summary()).toMatchObject({ start, title: SAMPLE.title, readable: true });
    expect((await summary())?.visit).toBeUndefined();
    vi.doUnmock('../../../../src/storage/library/summary.ts');
    expect(await fresh.writeWork(work(plan, { savedAt: NOON + 1 }), NOON)).toMatchObject({ ok: true });
    expect(await summary()).toMatchObject({ start, visit: { zone: SAMPLE.site.timeZone } });
  });

  it('is written although the code for its summary never comes', async () => {
    vi.doMock('../../../../src/storage/library/summary.ts', () => new Promise(() => undefined));
    vi.resetModules();
    const fresh = await import('../../../../src/storage/library/plans.ts');
    expect(await fresh.writeWork(work(titled('First')), null)).toMatchObject({ ok: true });
    vi.doUnmock('../../../../src/storage/library/summary.ts');
    expect(await titles()).toEqual(['First']);
  });

  it('that is written over on purpose is kept as a version', async () => {
    await writeWork(work(titled('First')), null);
    await writeWork(work(titled('Second'), { tab: 'two', savedAt: NOON + 1 }), null, true);
    expect(await readVersions('p')).toMatchObject([{ why: 'other-tab', text: writePlan(titled('First')) }]);
  });

  it('in another tab is another plan: both are written', async () => {
    await writeWork(work(titled('First')), null);
    await writeWork(work(titled('Second'), { id: 'q', tab: 'two' }), null);
    expect(await titles()).toEqual(['First', 'Second']);
  });

  it('keeps the state in which it rested for a minute, and none that lasted a moment', async () => {
    let lastSeen: number | null = null;
    for (const [index, after] of [0, 2, 4, 90, 92].entries()) {
      const savedAt = NOON + after * 1000;
      await writeWork(work(titled(`State ${index}`), { savedAt }), lastSeen);
      lastSeen = savedAt;
    }
    // The first of all is due too: nothing was kept before it.
    const kept = (await readVersions('p')).map(({ text }) => /State \d/.exec(text ?? '')?.[0]);
    expect(kept).toEqual(['State 2', 'State 0']);
  });

  it('is told in words when the store is full, and what was there stays', async () => {
    await writeWork(work(titled('First')), null);
    const put = IDBObjectStore.prototype.put;
    IDBObjectStore.prototype.put = () => {
      throw new DOMException('no room', 'QuotaExceededError');
    };
    const result = await writeWork(work(titled('Second'), { savedAt: NOON + MINUTE }), NOON);
    IDBObjectStore.prototype.put = put;
    expect(result).toMatchObject({ ok: false, reason: expect.stringContaining('storage of this browser is full') });
    expect(await titles()).toEqual(['First']);
  });
});

describe('pictures', () => {
  it('stay as long as a plan or a version has them, and go with the last', async () => {
    await writeWork(work(titled('With', picture('A'))), null);
    await writeWork(work(titled('With', picture('A')), { id: 'q' }), null);
    await writeWork(work(titled('Without'), { savedAt: NOON + 2 * MINUTE }), NOON);
    expect(await pictureCount()).toBe(1);
    await destroy(['q']);
    expect(await pictureCount()).toBe(1); // the version of p still has it
    expect((await readVersions('p'))[0]?.text).toContain(picture('A'));
    await destroy(['p']);
    expect(await pictureCount()).toBe(0);
  });
});

describe('the bin', () => {
  it('is not emptied by a clock that was set ahead, but after thirty days on seven of which the app was opened', async () => {
    await writeWork(work(titled('Binned')), null);
    await setTrashed(['p'], NOON);
    const days = 86_400_000;
    for (const _ of [1, 2, 3]) await destroyOutlived(NOON + 400 * days);
    expect(await readSummaries()).toHaveLength(1);
    for (let day = 0; day < 6; day++) await destroyOutlived(NOON + day * days);
    expect(await readSummaries()).toHaveLength(1);
    await destroyOutlived(NOON + 31 * days);
    expect(await readSummaries()).toEqual([]);
  });

  it('keeps a plan for thirty days; who draws on it takes it out', async () => {
    await writeWork(work(titled('Binned')), null);
    await setTrashed(['p'], NOON);
    const days = 86_400_000;
    expect(outlived(await readSummaries(), NOON + 30 * days)).toEqual([]);
    expect(outlived(await readSummaries(), NOON + 30 * days + 1)).toEqual(['p']);
    await writeWork(work(titled('Drawn on'), { savedAt: NOON + 1 }), NOON);
    expect((await readSummaries())[0]?.binnedAt).toBeNull();
  });
});

describe('everything in one file', () => {
  async function exported(): Promise<string> {
    await writeWork(work(titled('One', picture('A'))), null);
    await writeWork(work(titled('One, later', picture('A')), { savedAt: NOON + 2 * MINUTE }), NOON);
    await writeWork(work(titled('Two'), { id: 'q' }), null);
    await setTrashed(['q'], NOON + MINUTE);
    return (await libraryAsFile(NOON)).text;
  }
  async function importPlans(text: string) {
    const shelf = readLibraryFile(text);
    if (!shelf.ok) throw new Error(JSON.stringify(shelf.problems));
    return (await mergePlans(shelf.plans, NOON + 9 * MINUTE)).counts;
  }

  it('comes back whole on an empty shelf, and is recognized the second time', async () => {
    const text = await exported();
    const before = await Promise.all([readSummaries(), readVersions('p'), readWork('p'), pictureCount()]);
    await closeDatabase();
    globalThis.indexedDB = new IDBFactory();
    expect(await importPlans(text)).toMatchObject({ new: 2, same: 0 });
    const [cards, versions, plan, pictures] = await Promise.all([
      readSummaries(),
      readVersions('p'),
      readWork('p'),
      pictureCount(),
    ]);
    expect(cards).toEqual(before[0]);
    expect(versions).toEqual(before[1]);
    expect(plan?.text).toBe(before[2]?.text);
    expect(pictures).toBe(before[3]);
    expect(await importPlans(text)).toMatchObject({ new: 0, same: 2 });
    expect(await readSummaries()).toEqual(before[0]);
  });

  it('never takes the place of what was drawn here meanwhile', async () => {
    const text = await exported();
    await writeWork(work(titled('One, drawn on here'), { savedAt: NOON + 5 * MINUTE }), NOON + 2 * MINUTE);
    await destroy(['q']);
    expect(await importPlans(text)).toMatchObject({ same: 1, new: 1 });
    expect(await titles()).toEqual(['One, drawn on here', 'Two']);
  });

  it('goes on with a plan that was drawn on elsewhere, and keeps how it stood here', async () => {
    const text = await exported();
    await destroy(['p']);
    await writeWork(work(titled('One', picture('A'))), null); // as it stood before it was drawn on elsewhere
    expect(await importPlans(text)).toMatchObject({ newer: 1 });
    expect((await readSummaries()).find(({ id }) => id === 'p')?.title).toBe('One, later');
    expect((await readVersions('p')).some(({ why, text: kept }) => why === 'imported' && kept?.includes('"One"'))).toBe(
      true,
    );
  });

  it('is taken in whole or not at all', async () => {
    const text = await exported();
    await destroy(['p', 'q']);
    const put = IDBObjectStore.prototype.put;
    let left = 4;
    IDBObjectStore.prototype.put = function (this: IDBObjectStore, ...given) {
      if (left-- === 0) throw new DOMException('no room', 'QuotaExceededError');
      return put.apply(this, given);
    };
    await expect(importPlans(text)).rejects.toThrow();
    IDBObjectStore.prototype.put = put;
    expect(await readSummaries()).toEqual([]);
    expect(await pictureCount()).toBe(0);
  });
});

describe('versions of two tabs', () => {
  it('are kept beside each other', async () => {
    await writeWork(work(titled('Here')), null);
    expect(await keepTextAsVersion('p', writePlan(titled('There')), NOON, 'other-tab')).toBe(true);
    expect(await readVersions('p')).toHaveLength(1);
  });
});
