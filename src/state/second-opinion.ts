import type { Plan } from '../../geometry/plan/model.ts';
import { memoizeRecent } from '../../geometry/plane/memoize.ts';
import type { Computed } from '../../geometry/recheck/compare.ts';
import { withAgreedVerdict } from '../../geometry/recheck/published-report.ts';
import type { Opinion } from '../../geometry/recheck/types.ts';

/** What the two computations of a plan's verdicts come to, by detector. */
export interface Second {
  /** The plan that was computed a second time. */
  readonly plan: Plan;
  readonly computed: ReadonlyMap<string, Computed>;
  /** Detectors that the two differ on: until the next answer their verdict is unknown. One object for "none". */
  readonly doubts: Doubts;
}
export type Doubts = ReadonlyMap<string, Computed & { readonly says: string }>;

export const NO_DOUBTS: Doubts = new Map();
let current: Doubts = NO_DOUBTS;

/** From now on the verdicts of these detectors are unknown. */
export function setDoubts(doubts: Doubts): void {
  current = doubts;
}

/** What the two computations differ on, of a detector, in words; undefined where they agree, or the second is not known yet. */
export const doubtOf = (id: string): string | undefined => current.get(id)?.says;

const settledReports = new WeakMap<object, { readonly doubts: Doubts; readonly reports: readonly unknown[] }>();
/** The reports with the verdicts that may be shown: unknown where the two computations differ. Without a doubt the same array. */
export function withoutDoubt<
  Report extends { readonly id: string; readonly verdict: Opinion['levels'][number]['detectors'][number]['verdict'] },
>(reports: readonly Report[]): readonly Report[] {
  if (current.size === 0) return reports;
  const known = settledReports.get(reports);
  // What is kept for these reports was made of them.
  if (known?.doubts === current) return known.reports as readonly Report[];
  const made = reports.map((report) => withAgreedVerdict(report, current.get(report.id) ?? null));
  settledReports.set(reports, { doubts: current, reports: made });
  return made;
}

/** `memoizeRecent` whose results are dropped when a doubt comes or goes: for results that contain verdicts. */
export function memoizeUntilDoubt<Key extends object, Value>(
  build: (key: Key) => Value,
  most: number,
): (key: Key) => Value {
  let doubts = current;
  let kept = memoizeRecent(build, most);
  return (key) => {
    if (doubts !== current) {
      doubts = current;
      kept = memoizeRecent(build, most);
    }
    return kept(key);
  };
}
