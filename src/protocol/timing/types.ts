import type { Verdict } from '../../../geometry/check/types.ts';
import type { Source } from '../../../geometry/rules/types.ts';
import type { Ms } from './clock.ts';

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

/** The instants of a visit, ms; null for those that are not known. A pick-up that happened outweighs a planned one. */
export interface VisitTimes {
  readonly closed: Ms | null;
  readonly opened: Ms | null;
  readonly mitigation: Ms | null;
  readonly start: Ms | null;
  /** The pick-up that happened, or the planned one while none has. */
  readonly end: Ms | null;
  /** Whether `end` is only planned. */
  readonly planned: boolean;
  readonly posted: Ms | null;
  readonly received: Ms | null;
}
