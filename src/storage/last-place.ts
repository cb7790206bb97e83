import { titleWords } from './library/described.ts';
import { readSummaries } from './library/plans.ts';
import { useLibrary } from './library-state.ts';
import { planOf } from './other-plans.ts';

/** Site of another plan of the library. */
export interface LastPlace {
  /** Its title in words. */
  readonly title: string;
  /** Degrees north and east. */
  readonly latitude: number;
  readonly longitude: number;
  readonly timeZone: string;
}

/** Maximum number of plans that are read, the latest first. */
const MOST_READ = 12;

/** Returns the place of the last changed plan that has one, except the open plan; null for none. Throws if the store cannot be read. */
export async function lastPlace(): Promise<LastPlace | null> {
  const open = useLibrary.getState().openId;
  const summaries = (await readSummaries())
    .filter(({ id, binnedAt, readable }) => binnedAt === null && readable && id !== open)
    .sort((a, b) => b.changedAt - a.changedAt);
  for (const summary of summaries.slice(0, MOST_READ)) {
    const site = (await planOf(summary.id))?.site;
    if (!site || site.latitude === null || site.longitude === null) continue;
    const { latitude, longitude, timeZone } = site;
    return { title: titleWords(summary), latitude, longitude, timeZone };
  }
  return null;
}
