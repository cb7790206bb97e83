import type { Mm, XY } from '../plan/model.ts';
import type { RuleOverride } from '../rules/profiles.ts';
import type { RuleId, Source } from '../rules/types.ts';

/** From worst to best: blocked, unknown, tight, clear. */
export type Verdict = 'blocked' | 'unknown' | 'tight' | 'clear';

/** The two points between which a distance was measured: on the detector's rim, and on the subject. */
export interface Witness {
  readonly rim: XY;
  readonly subject: XY;
}

/** One rule checked against one subject. Lengths in mm. */
export interface Check {
  readonly rule: RuleId;
  /** Id of the wall, opening, fixture, object or detector; null for the room, the level and heights. */
  readonly subject: string | null;
  /** The limit with the smaller margin; null where the rule has no distance or could not run. */
  readonly required: Mm | null;
  readonly measured: Mm | null;
  /** `measured − required`, or the reverse for a maximum; negative when the limit is broken. */
  readonly margin: Mm | null;
  /** Whether `required` is a minimum or a maximum. */
  readonly bound: 'least' | 'most';
  readonly verdict: Verdict;
  /** An unknown that is reported as not run and does not lower the overall verdict. */
  readonly notRun: boolean;
  /** Every source in one line; `sources` has the mark of each. */
  readonly source: string;
  readonly sources: readonly Source[];
  /** Set where the plan overrides the rule: the published limit, whether the override is looser, and the note. */
  readonly override: RuleOverride | null;
  /** Where the length is drawn; null for heights and for checks without a distance. */
  readonly witness: Witness | null;
  /** In plain words, why the verdict is unknown or blocked without a number; else "". */
  readonly reason: string;
}

export interface DetectorReport {
  readonly id: string;
  readonly verdict: Verdict;
  /** Id of the label of the room that contains the axis; null for none or an unlabeled room. */
  readonly room: string | null;
  /** For each rule that applies, the nearest subject and every subject that is not clear. */
  readonly checks: readonly Check[];
}
