import type { Verdict } from '../../../geometry/check/types.ts';
import type { Source } from '../../../geometry/rules/types.ts';

export type TimingRule = 'exposure' | 'closed-building' | 'mitigation-system' | 'weather' | 'laboratory';

/** The check of one time limit. */
export interface TimingCheck {
  readonly rule: TimingRule;
  /** "not-run": nothing to check yet, never a pass. */
  readonly verdict: Verdict | 'not-run';
  /** Sentences with the finding, the requirement, and what can be done. */
  readonly detail: string;
  readonly sources: readonly Source[];
}

/** Name of each rule, on screen and in print. */
export const TIMING_NAME: Readonly<Record<TimingRule, string>> = {
  'closed-building': 'Closed-building hours',
  'mitigation-system': 'Mitigation system',
  exposure: 'Exposure',
  weather: 'Weather',
  laboratory: 'Laboratory',
};
