import { checkDetector } from '../../geometry/check/check-detector.ts';
import { worstVerdict } from '../../geometry/check/measure.ts';
import type { Verdict } from '../../geometry/check/types.ts';
import type { LevelModel } from '../../geometry/level/types.ts';
import type { Detector, Plan } from '../../geometry/plan/model.ts';
import { instantMs } from '../../geometry/planfile/instant.ts';
import { keepSunFloor, sunFloor } from '../../geometry/sun/sun-floor.ts';
import { sweptAreaSteps } from '../../geometry/sun/swept.ts';
import { sunTimes } from '../../geometry/sun/times.ts';
import { DAY } from '../protocol/timing/clock.ts';
import { NO_CLOUDS } from './sun-words.ts';

/** Largest delay of the start that is examined, days: a visit is delayed by less, or planned again. */
const MOST_DAYS_LATER = 7;

/** The first later start with which direct sun gives a detector another verdict. */
export interface LateStart {
  /** Days after the planned start; null if no delay that was examined changes the verdict. */
  readonly days: number | null;
  readonly verdict: Verdict;
}

/**
 * Computes the first later start with another verdict of direct sun for a detector. Yields between days, so that a page stays responsive.
 * Returns null if direct sun is not computed.
 */
export function* lateStartSteps(plan: Plan, model: LevelModel, detector: Detector): Generator<void, LateStart | null> {
  const planned = sunVerdict(plan, model, detector);
  if (!planned || planned === 'unknown') return null;
  for (let days = 1; days <= MOST_DAYS_LATER; days++) {
    const later = startedLater(plan, days);
    const times = sunTimes(later);
    if (!times) return null;
    const { base, tall } = detector;
    if (!sunFloor(model, times, { base, tall }))
      keepSunFloor(model, times, { base, tall }, yield* sweptAreaSteps(model, times, { base, tall }));
    yield;
    const verdict = sunVerdict(later, model, detector);
    if (!verdict) return null;
    if (verdict !== planned) return { days, verdict };
  }
  return { days: null, verdict: planned };
}

/** Returns the effect of a later start than planned, as a sentence. */
export function lateStartWords({ days, verdict }: LateStart): string {
  if (days === null)
    return `Direct sun: a start 1 to ${MOST_DAYS_LATER} days later, at the same time of day, changes nothing. ${NO_CLOUDS}`;
  const start = days === 1 ? 'a day' : `${days} days`;
  return `This holds for the planned days only: with a start ${start} later direct sun ${SAYS[verdict]}. ${NO_CLOUDS}`;
}

const SAYS: Readonly<Record<Verdict, string>> = {
  blocked: 'blocks this spot',
  tight: 'makes this spot tight',
  clear: 'leaves this spot clear',
  unknown: 'is not known',
};

function startedLater(plan: Plan, days: number): Plan {
  const later = (text: string | null) => {
    const at = text === null ? null : instantMs(text);
    return at === null ? text : new Date(at + days * DAY).toISOString();
  };
  const { start, end, plannedEnd = null } = plan.visit;
  return {
    ...plan,
    visit: { ...plan.visit, start: later(start), end: later(end), plannedEnd: later(plannedEnd) },
  };
}

function sunVerdict(plan: Plan, model: LevelModel, detector: Detector): Verdict | null {
  const rows = checkDetector(plan, model, detector).checks.filter(({ rule }) => rule === 'direct-sun');
  if (rows.length === 0 || rows.some(({ notRun }) => notRun)) return null;
  return worstVerdict(rows);
}
