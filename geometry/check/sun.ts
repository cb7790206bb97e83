import type { LevelModel } from '../level/types.ts';
import type { Detector, Plan } from '../plan/model.ts';
import { capital, listed } from '../plan/nouns.ts';
import { ringBody } from '../plane/body.ts';
import { memoize } from '../plane/memoize.ts';
import { LIMIT_TOLERANCE } from '../plane/tolerances.ts';
import type { EffectiveRule } from '../rules/profiles.ts';
import { glazedOpenings, unmeasuredGlass } from '../sun/glazed.ts';
import { type Heights, type Swept, type SweptArea, sunFloor } from '../sun/sun-floor.ts';
import { exposureEnd, sunTimes } from '../sun/times.ts';
import { wasLookedFor } from './looked-for.ts';
import { reasonCheck } from './measure.ts';
import type { Subject } from './subjects.ts';
import { UNMEASURED_CARRIER, unmeasuredCarrier } from './support.ts';
import type { Check } from './types.ts';

/** The state of direct sun on a level, at the height of a detector. */
type SunState =
  /** No sun enters, whatever the place and the times. */
  | { readonly state: 'none'; readonly reason: string }
  /** The place of the house, north or the times of the test are missing. */
  | { readonly state: 'not-run'; readonly reason: string }
  /** Place and times are known, but the sun cannot be decided: not yet (`pending`), or not at all. */
  | { readonly state: 'unknown'; readonly reason: string; readonly pending: boolean }
  | Extract<Swept, { state: 'known' }>;

/** The reason of a row where the sun was computed and no light comes in. */
export const NO_SUN_COMES_IN = 'No direct sun comes in at this height during the test.';

/** The reason while the swept area is being computed. */
const PENDING = 'Direct sun is being worked out.';

/** Returns the state of direct sun at the height of a detector. */
export function sunState(plan: Plan, model: LevelModel, heights: Heights): SunState {
  if (!model.openings.some(({ outside }) => outside)) return { state: 'none', reason: 'No exterior opening is drawn.' };
  const hasGlass = glazedOpenings(model).length > 0;
  const missing = missingForSun(plan, hasGlass);
  if (missing) return { state: 'not-run', reason: missing };
  if (!hasGlass) return { state: 'none', reason: 'No opening to the outside has glass.' };
  const times = sunTimes(plan);
  if (!times) return { state: 'unknown', reason: 'The times of the test cannot be read.', pending: false };
  if (times.end < times.start) {
    const reason =
      plan.visit.end === null ? 'The pick-up is planned before the start.' : 'The test ends before it starts.';
    return { state: 'unknown', reason, pending: false };
  }
  const swept = sunFloor(model, times, heights);
  if (!swept) return { state: 'unknown', reason: PENDING, pending: true };
  return swept.state === 'known' ? swept : { ...swept, pending: false };
}

/** Data that direct sun is computed from. */
export type SunData = 'location' | 'north' | 'times' | 'pick-up';

const SUN_DATA_WORDS: Readonly<Record<SunData, string>> = {
  location: 'the location of the house',
  north: 'north',
  times: 'the times of the test',
  'pick-up': 'the time of the pick-up',
};

/** Returns the data that is missing for direct sun. North is needed only where light comes in. */
export function missingSunData({ site, visit }: Plan, hasGlass: boolean): readonly SunData[] {
  const missing: SunData[] = [];
  if (site.latitude === null || site.longitude === null) missing.push('location');
  if (hasGlass && site.northAnswered === false) missing.push('north');
  if (visit.start === null) missing.push('times');
  else if (exposureEnd(visit) === null) missing.push('pick-up');
  return missing;
}

/** Returns the missing data as a sentence; "" for none. */
function missingForSun(plan: Plan, hasGlass: boolean): string {
  const missing = missingSunData(plan, hasGlass);
  if (missing.length === 0) return '';
  const verb = missing.length > 1 || missing[0] === 'times' ? 'are' : 'is';
  return `${capital(listed(missing.map((each) => SUN_DATA_WORDS[each])))} ${verb} not given. Keep out of direct sun.`;
}

const NOTHING: readonly Subject[] = [];

/**
 * Returns the swept areas that the sun rule keeps a detector away from, each with the opening that lets the light in; empty where
 * none is known. Memoized by identity.
 */
export function sunSubjects(plan: Plan, model: LevelModel, rule: EffectiveRule, heights: Heights): readonly Subject[] {
  const sun = sunState(plan, model, heights);
  if (sun.state !== 'known') return NOTHING;
  return subjectsOfAreas(sun.areas)[(rule.least ?? 0) > LIMIT_TOLERANCE ? 'apart' : 'outside'];
}

/** The areas apply at the detector's own height, so `bottom` and `top` are not used. */
const subjectsOfAreas = memoize((areas: readonly SweptArea[]) => {
  const subjects = (keepOut: boolean) =>
    areas.flatMap(({ opening: id, rings }) =>
      rings.map(
        (ring): Subject => ({ id, what: 'sun', body: ringBody(ring), bottom: 0, top: 0, keepOut, solid: false }),
      ),
    );
  // For a rule without a distance, the detector must stay out of the sun, as it must stay out of an air stream.
  return { apart: subjects(false), outside: subjects(true) };
});

/**
 * Returns the row of the sun rule where nothing is measured: no sun reaches the height of the detector, the rule is not run, or it
 * cannot be decided. A person's confirmation on site counts only where the sun is not computed.
 */
export function checkNoSun(plan: Plan, model: LevelModel, rule: EffectiveRule, detector: Detector): Check[] {
  const sun = sunState(plan, model, detector);
  const isConfirmed =
    wasLookedFor(model, rule) && (sun.state === 'not-run' || (sun.state === 'unknown' && !sun.pending));
  return [{ ...(isConfirmed ? confirmed(rule) : rowOf(sun, rule)), required: rule.least }];
}

/**
 * Returns the rows of the sun rule, as far as they rest on measured heights: the light is computed between sill and head, at the height of the
 * detector. While one of those is not measured, blocked rows stay; else one not-run row, or a clear one confirmed on site, replaces them.
 */
export function sunAsMeasured(
  plan: Plan,
  model: LevelModel,
  rule: EffectiveRule,
  detector: Detector,
  rows: readonly Check[],
): Check[] {
  const open = unmeasuredForSun(model, detector);
  const ran = open !== null && sunState(plan, model, detector).state === 'known';
  if (!ran || rows.some(({ verdict }) => verdict === 'blocked')) return [...rows];
  const row = wasLookedFor(model, rule)
    ? confirmed(rule)
    : { ...reasonCheck(rule, 'unknown', `${open.reason} Keep out of direct sun.`, true), subject: open.id };
  return [{ ...row, required: rule.least }];
}

/** Returns the opening or the thing under a detector whose height the sun depends on and nobody has measured, with the reason; null for none. */
function unmeasuredForSun(
  model: LevelModel,
  detector: Detector,
): { readonly id: string; readonly reason: string } | null {
  const [glass] = unmeasuredGlass(model);
  if (glass) return { id: glass.opening.id, reason: UNMEASURED_GLASS };
  const carrier = unmeasuredCarrier(model.level, detector);
  return carrier && { id: carrier.id, reason: UNMEASURED_CARRIER };
}

/** The reason where the sill or the head of an opening that lets light in is not measured. */
const UNMEASURED_GLASS = 'Not every opening that lets light in has its sill and its head measured.';

const confirmed = (rule: EffectiveRule) =>
  reasonCheck(rule, 'clear', 'Looked at on site: no direct sun reaches the spot.');

function rowOf(sun: SunState, rule: EffectiveRule): Check {
  switch (sun.state) {
    case 'none':
      return reasonCheck(rule, 'clear', sun.reason);
    case 'not-run':
      return reasonCheck(rule, 'unknown', sun.reason, true);
    case 'unknown':
      return reasonCheck(rule, 'unknown', sun.reason);
    case 'known':
      return reasonCheck(rule, 'clear', NO_SUN_COMES_IN);
  }
}
