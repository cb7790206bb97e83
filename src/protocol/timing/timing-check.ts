import type { Verdict } from '../../../geometry/check/types.ts';
import type { Source } from '../../../geometry/rules/types.ts';

export type TimingRule = 'exposure' | 'closed-building' | 'mitigation-system' | 'weather' | 'laboratory';

/** One limit of time and how the visit keeps it. */
export interface TimingCheck {
  readonly rule: TimingRule;
  /** "not-run": nothing to look at yet, and never a pass. */
  readonly verdict: Verdict | 'not-run';
  /** What was found, what is needed, and the way out. */
  readonly detail: string;
  readonly sources: readonly Source[];
}

/** What each rule is called, on screen and in print. */
export const TIMING_NAME: Readonly<Record<TimingRule, string>> = {
  'closed-building': 'Closed house',
  'mitigation-system': 'Mitigation system',
  exposure: 'Time laid out',
  weather: 'Weather',
  laboratory: 'Laboratory',
};
