import { change } from './database.ts';
import { destroy, outlived, readSummaries } from './plans.ts';

const DAY = 86_400_000;
/** The app must have been opened on this many days since, before a plan is deleted for good: a clock set ahead counts as one day. */
const MOST_OPENED = 7;
const SETTING = 'trash-days';

/** The last day on which deleted plans were counted, in days since 1970, and on how many days the app was opened since each was deleted. */
interface TrashDays {
  readonly day: number;
  readonly opened: Readonly<Record<string, number>>;
}

/**
 * Deletes plans for good that were deleted long enough ago, both by the clock and by the days on which the app was opened since: either
 * alone may be wrong. Throws if the store cannot be read or written.
 */
export async function destroyOutlived(now: number): Promise<void> {
  const trashed = (await readSummaries()).filter(({ binnedAt }) => binnedAt !== null);
  const { opened } = await countDay(
    trashed.map(({ id }) => id),
    Math.floor(now / DAY),
  );
  await destroy(outlived(trashed, now).filter((id) => (opened[id] ?? 0) >= MOST_OPENED));
}

/** Counts today once for each of the deleted plans. */
function countDay(ids: readonly string[], day: number): Promise<TrashDays> {
  return change(['settings'], async (write) => {
    const store = write.objectStore('settings');
    const found: unknown = await store.get(SETTING);
    const before = isTrashDays(found) ? found : { day: -1, opened: {} };
    const more = before.day === day ? 0 : 1;
    const opened = Object.fromEntries(ids.map((id) => [id, (before.opened[id] ?? 0) + more]));
    const days = { day, opened };
    await store.put(days, SETTING);
    return days;
  });
}

function isTrashDays(value: unknown): value is TrashDays {
  if (typeof value !== 'object' || value === null) return false;
  const { day, opened } = value as Partial<Record<keyof TrashDays, unknown>>;
  return typeof day === 'number' && typeof opened === 'object' && opened !== null;
}
