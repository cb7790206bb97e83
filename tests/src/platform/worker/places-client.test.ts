import { describe, expect, it } from 'vitest';
import type { Plan } from '../../../../geometry/plan/model.ts';
import type { PlaceQuery } from '../../../../src/platform/worker/place-query.ts';
import { cancelRequests, requestPlaces } from '../../../../src/platform/worker/places-client.ts';
import { samplePlan } from '../../../helpers/sample-files.ts';

/** No worker here: the calls are answered one after the other all the same. */
const PLAN: Plan = samplePlan('01-plain-basement');
const at = (base: number): PlaceQuery => {
  return { probe: { base, radius: 50.8, tall: 25.4 }, members: 1, count: 1, onFurniture: false };
};
/** Comes back when all that was asked for before is answered: lines are answered in the order in which they were begun. */
const idle = () => new Promise((done) => requestPlaces('the last of all', PLAN, 'L1', at(762), done));

describe('seek(line, plan, level, wanted, done)', () => {
  it('answers with the best places', async () => {
    const places = await new Promise<readonly unknown[]>((done) => requestPlaces('spots', PLAN, 'L1', at(762), done));
    expect(places).toMatchObject([{ base: 762, on: null }]);
  });

  it('keeps only the newest of the calls that wait in a line; the one that runs is answered', async () => {
    const answered: number[] = [];
    for (const base of [762, 800, 820, 840]) requestPlaces('spots', PLAN, 'L1', at(base), () => answered.push(base));
    await idle();
    expect(answered).toEqual([762, 840]);
  });

  it('keeps the lines apart', async () => {
    const answered: string[] = [];
    requestPlaces('first', PLAN, 'L1', at(762), () => answered.push('first'));
    requestPlaces('spots', PLAN, 'L1', at(762), () => answered.push('spots'));
    requestPlaces('group', PLAN, 'L1', { ...at(762), members: 2 }, () => answered.push('group'));
    await idle();
    expect(answered).toEqual(['first', 'spots', 'group']);
  });

  it('drops what a line waits for when it is left', async () => {
    const answered: string[] = [];
    requestPlaces('first', PLAN, 'L1', at(762), () => answered.push('first'));
    requestPlaces('spots', PLAN, 'L1', at(762), () => answered.push('spots'));
    cancelRequests('spots');
    await idle();
    expect(answered).toEqual(['first']);
  });
});
