import '../../helpers/fake-store.ts';
import { readFileSync } from 'node:fs';
import { IDBFactory } from 'fake-indexeddb';
import { beforeEach, describe, expect, it } from 'vitest';
import type { Site } from '../../../geometry/plan/model.ts';
import { parsePlan } from '../../../geometry/planfile/parse.ts';
import { writePlan } from '../../../geometry/planfile/write.ts';
import { lastPlace } from '../../../src/storage/last-place.ts';
import { closeDatabase } from '../../../src/storage/library/database.ts';
import { setTrashed, writeWork } from '../../../src/storage/library/plans.ts';
import { NO_VIEW } from '../../../src/storage/library/records.ts';
import { useLibrary } from '../../../src/storage/library-state.ts';

const read = parsePlan(readFileSync('samples/01-plain-basement.plan.json', 'utf8'));
if (!read.ok) throw new Error('the sample is no plan');
const SAMPLE = read.plan;

function write(id: string, savedAt: number, site: Partial<Site>) {
  const plan = { ...SAMPLE, title: `Plan ${id}`, site: { ...SAMPLE.site, ...site } };
  return writeWork({ id, plan, text: writePlan(plan), savedAt, tab: 'one', view: NO_VIEW }, null);
}

beforeEach(async () => {
  await closeDatabase();
  globalThis.indexedDB = new IDBFactory();
  useLibrary.setState({ openId: 'open' });
});

describe('the place of the last plan', () => {
  it('is that of the plan changed last, of those with a place, without the open one and deleted ones', async () => {
    expect(await lastPlace()).toBeNull();
    await write('old', 1, { latitude: 10, longitude: 20, timeZone: 'UTC' });
    await write('newer', 2, { latitude: 41.2, longitude: -75.9, timeZone: 'America/New_York' });
    await write('deleted', 3, { latitude: 1, longitude: 2 });
    await setTrashed(['deleted'], 5);
    await write('without', 4, { latitude: null, longitude: null });
    await write('open', 5, { latitude: 3, longitude: 4 });
    expect(await lastPlace()).toEqual({
      title: 'Plan newer',
      latitude: 41.2,
      longitude: -75.9,
      timeZone: 'America/New_York',
    });
  });
});
