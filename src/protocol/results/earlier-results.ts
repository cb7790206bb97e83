import type { Plan } from '../../../geometry/plan/model.ts';
import type { EarlierResult } from '../../../geometry/plan/test-record.ts';
import { DAY, msOf } from '../timing/clock.ts';
import { compare } from './exact.ts';
import { type LocationResults, locations } from './locations.ts';
import { inPicocuries } from './radon.ts';

/** Earlier results of one location. Of several results of one term, the highest counts: the strict reading. */
export interface EarlierResults {
  readonly shortTerm: EarlierResult | null;
  readonly longTerm: EarlierResult | null;
  /** Number of earlier results without a location, on a plan with several locations: they are not averaged with any. */
  readonly withoutLocation: number;
}

/**
 * Returns the earlier results of the location of `set`. A result without a detector belongs to it only where the plan has a single
 * location: separate locations are never averaged (ANSI/AARST MAH-2019, 8.5.2(d)).
 */
export function earlierResultsAt(plan: Plan, set: LocationResults): EarlierResults {
  const all = plan.earlier ?? [];
  const onePlace = locations(plan).length === 1;
  const here = all.filter(({ detector }) =>
    detector == null ? onePlace : set.detectors.some(({ id }) => id === detector),
  );
  return {
    shortTerm: highest(here.filter(({ term }) => term === 'short-term')),
    longTerm: highest(here.filter(({ term }) => term === 'long-term')),
    withoutLocation: onePlace ? 0 : all.filter(({ detector }) => detector == null).length,
  };
}

function highest(results: readonly EarlierResult[]): EarlierResult | null {
  return results.reduce<EarlierResult | null>(
    (most, each) => (!most || compare(inPicocuries(each), inPicocuries(most)) > 0 ? each : most),
    null,
  );
}

/**
 * Longest time before this test, ms, at which an earlier result may lower its result: a home is tested again within 2 years (32 Ill. Adm.
 * Code Part 422, App. B, the strict term), so an older result is out of date. Our reading: no text says how far apart a test and its
 * follow-up may be.
 */
const STANDS_FOR = 730 * DAY;

/** Returns whether an earlier result may lower the result of this test. One that raises it counts whatever its date. */
export function mayLower({ visit }: Plan, { at }: Pick<EarlierResult, 'at'>): boolean {
  const [then, start] = [msOf(at), msOf(visit.start)];
  return then !== null && start !== null && then < start && start - then <= STANDS_FOR;
}

/** Returns the error in the date of an earlier result, which must be before this test; empty for none. */
export function earlierDateProblem({ visit }: Plan, { at }: Pick<EarlierResult, 'at'>): string {
  const [then, start] = [msOf(at), msOf(visit.start)];
  const after = then !== null && start !== null && then >= start;
  return after ? 'That is after this test was started. Review the day.' : '';
}
