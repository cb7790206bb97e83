import { counted } from '../../../../geometry/messages/index.ts';
import type { Plan } from '../../../../geometry/plan/model.ts';
import { namedDetectors } from '../../../protocol/custody/detectors.ts';
import { logEntryOf, withLogEntry } from '../../../protocol/custody/log-entries.ts';
import { useAppStore } from '../../../state/store.ts';
import { samePlan } from '../../../storage/library-state.ts';
import { megabytes } from '../../../storage/picture-file.ts';
import { LARGEST_PLAN_FILE } from '../../../storage/plan-files.ts';

/** Bytes of a plan file that are reserved for everything but pictures. */
const REST_OF_PLAN = 2_000_000;

/** Returns the bytes that pictures take in a plan file: the photos of the log and the pictures under the levels. */
function picturesLength({ log = [], levels }: Plan): number {
  const all = [...log.flatMap(({ photos }) => photos), ...levels.flatMap(({ tracing }) => tracing?.image ?? [])];
  return all.reduce((sum, image) => sum + image.length, 0);
}

/** Adds photos to the log of a detector, as one step of history. Shows a message with their size, and with those that cannot be read and why. */
export async function addPhotos(detector: string, files: readonly File[]): Promise<void> {
  const { say } = useAppStore.getState();
  const isSame = samePlan();
  say(files.length > 1 ? `Reading ${files.length} photos…` : `Reading ${files[0]?.name || 'the photo'}…`);
  const { images, refused } = await readAll(files);
  const { plan, run } = useAppStore.getState();
  // Reading is asynchronous: another plan may be open now, or the detector may be deleted.
  if (!isSame() || namedDetectors(plan).every((each) => each.id !== detector)) {
    say('The detector of these photos is no longer on the plan. They were not added.');
    return;
  }
  const length = images.reduce((sum, image) => sum + image.length, 0);
  if (picturesLength(plan) + length > LARGEST_PLAN_FILE - REST_OF_PLAN) {
    const there = megabytes(picturesLength(plan));
    say(`The pictures of this plan take ${there} already, and a plan file may have 20 MB. Remove some first.`);
    return;
  }
  const add = (now: Plan) => withLogEntry(now, detector, { photos: [...logEntryOf(now, detector).photos, ...images] });
  if (images.length > 0 && run(add)) return;
  const done = `${counted(images.length, 'photo')} in the log, ${megabytes(length)} of the plan.`;
  say([images.length > 0 ? done : '', ...refused].filter(Boolean).join(' '));
}

/** Reads the photos one after another: a tablet has too little memory for several large photos at a time. */
async function readAll(files: readonly File[]) {
  const { readPicture, LOG_PHOTO } = await import('../../../storage/picture.ts');
  const images: string[] = [];
  const refused: string[] = [];
  for (const file of files) {
    const read = await readPicture(file, LOG_PHOTO);
    if (read.ok) images.push(read.picture.image);
    else refused.push(read.reason);
  }
  return { images, refused };
}
