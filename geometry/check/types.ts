import type { Mm, XY } from '../plan/model.ts';
import type { RuleId, Source } from '../rules/types.ts';

/** Worst first: blocked, unknown, tight, clear. */
export type Verdict = 'blocked' | 'unknown' | 'tight' | 'clear';

/** The two points between which a distance was measured: on the detector's rim, and on the subject. */
export interface Witness {
  readonly rim: XY;
  readonly subject: XY;
}

/** One rule held against one subject. Lengths in mm. */
export interface Check {
  readonly rule: RuleId;
  /** Id of the wall, opening, fixture, object or detector; null for the room, the level, heights. */
  readonly subject: string | null;
  /** The limit that is nearer to being broken; null where the rule is not a distance or could not run. */
  readonly required: Mm | null;
  readonly measured: Mm | null;
  /** What there is to spare; negative = short by so much. `measured − required`, turned round for an upper limit. */
  readonly margin: Mm | null;
  /** Whether `required` is a least or a greatest value. */
  readonly bound: 'least' | 'most';
  readonly verdict: Verdict;
  /** An unknown that stands beside the verdict as "not run" and does not lower it. */
  readonly notRun: boolean;
  /** Every source in one line; `sources` has how each was come by. */
  readonly source: string;
  readonly sources: readonly Source[];
  /** Set where the plan overrides the rule: how, and the note. */
  readonly override: { readonly published: Mm; readonly loosened: boolean; readonly note: string } | null;
  /** Where a line with the length belongs on the drawing; null for heights and for what is not a distance. */
  readonly witness: Witness | null;
  /** Why it is unknown or blocked where no number says it; empty otherwise. In plain words. */
  readonly reason: string;
}

export interface DetectorReport {
  readonly id: string;
  readonly verdict: Verdict;
  /** Id of the label of the room that holds the axis; null for none or an unlabelled room. */
  readonly room: string | null;
  /** For each rule that applies: the nearest subject and every subject that is not clear. */
  readonly checks: readonly Check[];
}
