import type { Deg, Plan, SunWord } from '../plan/model.ts';
import { instantMs } from '../planfile/instant.ts';
import { DIRECT_SUN, sunWordOf, withNoneHere, withoutNoneHere } from './answers.ts';

/** A person's confirmation that no direct sun reaches the spot holds only for the days, place and north that it was given for. */

/**
 * How many days the visit may lie outside the days that the confirmation was given for: the sun's daily path moves by at most 1.2° in
 * three days, about two of its own widths. Recording the start, or a pick-up hours or a day off the plan, changes nothing; a visit that is
 * put off by a week needs another look. Common practice, no published source.
 */
const MOST_DAYS = 3;
/** How far the recorded place may differ, degrees: within a region the sun is about as high. Common practice, no published source. */
const MOST_OFF_PLACE: Deg = 0.5;
/** How far the recorded north may differ, degrees: the accuracy of a hand-held compass. Common practice, no published source. */
const MOST_OFF_NORTH: Deg = 5;

/**
 * Returns the plan after an edit without the confirmations that were given for other days, another place or another north, and why they were
 * removed; the same plan if the edit changes none of these. A confirmation that stays records what it was given for, so that moving the visit
 * in small steps does not extend it.
 */
export function withSunWordsSettled(
  before: Plan,
  after: Plan,
): { readonly plan: Plan; readonly outlived: 'days' | 'place' | null } {
  if (isSameSun(before, after)) return { plan: after, outlived: null };
  let plan = after;
  let outlived: 'days' | 'place' | null = null;
  for (const level of after.levels) {
    if (!level.lookedFor?.includes(DIRECT_SUN)) continue;
    const entry = level.lookedForBy?.find(({ rule }) => rule === DIRECT_SUN);
    const [given, is] = [entry?.sun ?? sunWordOf(before), sunWordOf(after)];
    const why = whyOutlived(given, is, entry?.at ?? null);
    outlived ??= why;
    const sun = filled(given, is);
    if (why) plan = withoutNoneHere(plan, level.id, [DIRECT_SUN]);
    else if (JSON.stringify(entry?.sun) !== JSON.stringify(sun))
      plan = withNoneHere(plan, level.id, DIRECT_SUN, { by: '', at: null, ...entry, sun });
  }
  return { plan, outlived };
}

/** Returns whether two plans have the same days, place and north. */
function isSameSun(a: Plan, b: Plan): boolean {
  return (a.visit === b.visit && a.site === b.site) || JSON.stringify(sunWordOf(a)) === JSON.stringify(sunWordOf(b));
}

/** Returns why a confirmation does not hold for the days, place and north of the plan now; null if it holds or this is not known. */
function whyOutlived(given: SunWord, is: SunWord, looked: string | null): 'days' | 'place' | null {
  if (isOtherDays(given, is, looked)) return 'days';
  return isOtherPlace(given, is) ? 'place' : null;
}

/** Fills the values that were not known when the confirmation was given with the first ones that become known. */
function filled(given: SunWord, is: SunWord): SunWord {
  return {
    start: given.start ?? is.start,
    end: given.end ?? is.end,
    latitude: given.latitude ?? is.latitude,
    longitude: given.longitude ?? is.longitude,
    north: given.north ?? is.north,
  };
}

function isOtherDays(given: SunWord, is: SunWord, looked: string | null): boolean {
  const [start, end] = [msOf(is.start), msOf(is.end)];
  // A confirmation given before the visit had dates holds for the days around the time when the person looked.
  const from = msOf(given.start ?? looked);
  const to = msOf(given.end);
  if (from === null) return false;
  const most = MOST_DAYS * 86_400_000;
  if (start !== null && (start < from - most || start > (to ?? from) + most)) return true;
  return end !== null && to !== null && end > to + most;
}

function isOtherPlace(given: SunWord, is: SunWord): boolean {
  const off = (a: Deg | null, b: Deg | null) => (a === null || b === null ? 0 : Math.abs(((b - a + 540) % 360) - 180));
  return (
    off(given.latitude, is.latitude) > MOST_OFF_PLACE ||
    off(given.longitude, is.longitude) > MOST_OFF_PLACE ||
    off(given.north, is.north) > MOST_OFF_NORTH
  );
}

const msOf = (text: string | null): number | null => (text === null ? null : instantMs(text));
