import type { Deg, Plan, SunWord } from '../plan/model.ts';
import { instantMs } from '../planfile/instant.ts';
import { DIRECT_SUN, sunWordOf, withNoneHere, withoutNoneHere } from './answers.ts';

/** A person's word that no direct sun reaches the spot: for which days, place and north it was given. */

/**
 * How far the days of the visit may lie outside of those that the word was given for: the sun's daily path moves by at most 1.2° in
 * three days, about two of its own widths. To record the start or the pick-up hours or a day off the plan changes nothing; a visit that
 * is put off by a week is looked at again. Common practice, no published source.
 */
const MOST_DAYS = 3;
/** The house may be told to stand so far off, degrees: within a region the sun stands as high. Common practice, no published source. */
const MOST_OFF_PLACE: Deg = 0.5;
/** And north so far off: as a hand-held compass is read. Common practice, no published source. */
const MOST_OFF_NORTH: Deg = 5;

/**
 * Returns the plan after an edit without the words that were given for other days, another place or another north, and why; where the edit
 * changes none of these, the plan itself. A word that stands records what it was given for, so that a visit that is moved bit by bit does
 * not take it along.
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

/** Whether days, place and north of a plan are those of another one. */
function isSameSun(a: Plan, b: Plan): boolean {
  return (a.visit === b.visit && a.site === b.site) || JSON.stringify(sunWordOf(a)) === JSON.stringify(sunWordOf(b));
}

/** Returns why a word was not given for a plan as it is now; null where it was, or nobody can know. */
function whyOutlived(given: SunWord, is: SunWord, looked: string | null): 'days' | 'place' | null {
  if (isOtherDays(given, is, looked)) return 'days';
  return isOtherPlace(given, is) ? 'place' : null;
}

/** What was not known when it was given is what became known first. */
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
  // Given before there were dates, it is for the visit to which somebody came to look.
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
