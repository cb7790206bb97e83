/** Retention of the earlier versions of a plan: close together at first, further apart as they age. */

const MINUTE = 60_000;
const HOUR = 60 * MINUTE;
const DAY = 24 * HOUR;

/** A state that did not change for this long becomes a version, ms. */
const REST = MINUTE;
/** Interval of versions while a plan is being changed, ms. */
const EVERY = 3 * MINUTE;
/** Maximum number of versions of a plan. */
export const MOST_VERSIONS = 60;

export interface Dated {
  readonly at: number;
  /** Kept for a reason other than the passing of time. */
  readonly marked: boolean;
}

/**
 * Returns whether the state that is about to be replaced is kept as a version. All times are in ms since 1970.
 * @param savedAt when that state was saved
 * @param versionAt when the newest version was saved, 0 for none
 */
export function isVersionDue(now: number, savedAt: number, versionAt: number): boolean {
  if (versionAt >= savedAt) return false;
  return now - savedAt >= REST || savedAt - versionAt >= EVERY;
}

/**
 * Returns the versions to delete; the order of `versions` does not matter. All versions of the last hour stay, then the newest of each hour
 * for a day, of each day for thirty days, and of each thirty days from then on. Marked versions stay for thirty days, and the oldest version
 * always stays. If more than `MOST_VERSIONS` are left, the oldest of them are deleted too, except the very oldest.
 */
export function outdatedVersions<T extends Dated>(versions: readonly T[], now: number): readonly T[] {
  const newestFirst = [...versions].sort((a, b) => b.at - a.at);
  const taken = new Set<string>();
  const kept = newestFirst.filter((version, index) => {
    const slot = slotOf(version, now);
    if (slot === null || index === newestFirst.length - 1) return true;
    if (taken.has(slot)) return false;
    taken.add(slot);
    return true;
  });
  const [oldest] = kept.slice(-1);
  const stays = new Set(kept.length > MOST_VERSIONS ? [...kept.slice(0, MOST_VERSIONS - 1), oldest] : kept);
  return newestFirst.filter((version) => !stays.has(version));
}

/** Returns the time slot of which only one version is kept; null for a version that is kept regardless of others. */
function slotOf({ at, marked }: Dated, now: number): string | null {
  const age = now - at;
  if (age < HOUR || (marked && age < 30 * DAY)) return null;
  if (age < DAY) return `hour ${Math.floor(at / HOUR)}`;
  if (age < 30 * DAY) return `day ${Math.floor(at / DAY)}`;
  return `month ${Math.floor(at / (30 * DAY))}`;
}
