import type { Plan } from '../../geometry/plan/model.ts';
import { memoize, memoizeLatest, memoizeRecent } from '../../geometry/plane/memoize.ts';
import type { Computed } from '../../geometry/recheck/compare.ts';
import { withAgreedVerdict } from '../../geometry/recheck/published-report.ts';
import type { Opinion } from '../../geometry/recheck/types.ts';
import { sunVersion } from './sun-version.ts';

/** The comparison of the two computations of a plan's verdicts, by detector. */
export interface Second {
  /** The plan that was computed a second time. */
  readonly plan: Plan;
  readonly computed: ReadonlyMap<string, Computed>;
  /** Detectors that the two differ on: until the next comparison their verdict is unknown. `NO_DOUBTS` for none. */
  readonly doubts: Doubts;
}
export type Doubts = ReadonlyMap<string, Computed & { readonly says: string }>;

export const NO_DOUBTS: Doubts = new Map();
let current: Doubts = NO_DOUBTS;

/** Makes the verdicts of these detectors unknown until the next call. */
export function setDoubts(doubts: Doubts): void {
  current = doubts;
}

/** Returns how the two computations of a detector differ, in words; undefined where they agree, or the second is not known yet. */
export const doubtOf = (id: string): string | undefined => current.get(id)?.says;

type CheckedReport = {
  readonly id: string;
  readonly verdict: Opinion['levels'][number]['detectors'][number]['verdict'];
};

const settledReports = memoize((reports: readonly CheckedReport[]) =>
  memoizeLatest((doubts: Doubts) => reports.map((report) => withAgreedVerdict(report, doubts.get(report.id) ?? null))),
);
/**
 * Returns the reports with the verdicts that may be shown: unknown where the two computations differ. Returns the same array if there are
 * no doubts.
 */
export function withoutDoubt<Report extends CheckedReport>(reports: readonly Report[]): readonly Report[] {
  // The cached array was built from these reports, so it has their type.
  return current.size === 0
    ? reports
    : (settledReports(reports)(current) as readonly CheckedReport[] as readonly Report[]);
}

/** Like `memoizeRecent`, but drops its results when the doubts change or more direct sun is computed: for results that contain verdicts. */
export function memoizeUntilDoubt<Key extends object, Value>(
  build: (key: Key) => Value,
  most: number,
): (key: Key) => Value {
  let doubts = current;
  let sun = sunVersion();
  let kept = memoizeRecent(build, most);
  return (key) => {
    if (doubts !== current || sun !== sunVersion()) {
      doubts = current;
      sun = sunVersion();
      kept = memoizeRecent(build, most);
    }
    return kept(key);
  };
}
