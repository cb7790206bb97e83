import { beforeEach, describe, expect, it, vi } from 'vitest';
import type { Plan } from '../../../../../geometry/plan/model.ts';
import { emptyLevel, emptyPlan } from '../../../../../geometry/planfile/empty.ts';
import type { PictureRead } from '../../../../../src/storage/picture.ts';

/** Pictures are read when the test says so. */
const reading: ((read: PictureRead) => void)[] = [];
vi.mock('../../../../../src/storage/picture.ts', () => ({
  LOG_PHOTO: {},
  readPicture: () => new Promise<PictureRead>((done) => reading.push(done)),
}));

import { useAppStore } from '../../../../../src/state/store.ts';
import { useLibrary } from '../../../../../src/storage/library-state.ts';
import { layUnder } from '../../../../../src/ui/stages/draw/tracing-actions.ts';
import { addPhotos } from '../../../../../src/ui/stages/log/photo-actions.ts';
import { detectorAt } from '../../../../helpers/drawn.ts';

const IMAGE = 'data:image/png;base64,AAAA';
const FILE = new File([], 'shelf.png');
const state = () => useAppStore.getState();

/** Both plans have a detector "d1" on a level "L1": only which plan it is tells them apart. */
const planCalled = (title: string): Plan => ({
  ...emptyPlan(),
  title,
  levels: [{ ...emptyLevel('L1'), detectors: [detectorAt([4000, 4000])] }],
});
function open(title: string): void {
  useLibrary.setState({ openId: title });
  state().openPlan(planCalled(title));
}
async function readIt(): Promise<void> {
  await vi.waitFor(() => expect(reading).toHaveLength(1));
  reading[0]?.({ ok: true, picture: { image: IMAGE, name: 'shelf.png', width: 10, height: 10, remark: '' } });
}

beforeEach(() => {
  reading.length = 0;
  open('One');
});

describe('a picture that is read while another plan is opened', () => {
  it('goes into the log of the plan it was picked for', async () => {
    const added = addPhotos('d1', [FILE]);
    await readIt();
    await added;
    expect(state().plan.log?.map(({ detector, photos }) => [detector, photos])).toEqual([['d1', [IMAGE]]]);
  });

  it('never goes into the log of the other plan, though it has a detector of that id', async () => {
    const added = addPhotos('d1', [FILE]);
    open('Other');
    await readIt();
    await added;
    expect(state().plan).toEqual(planCalled('Other'));
    expect(state().message).toBe('The detector of these photos is no longer on the plan. They were not added.');
  });

  it('never lies under the level of the other plan', async () => {
    const laid = layUnder(FILE);
    open('Other');
    await readIt();
    await laid;
    expect(state().plan).toEqual(planCalled('Other'));
    expect(state().message).toMatch(/^Another plan or level was opened meanwhile: the picture was not added\./);
  });
});
