import type { ConditionState } from '../../../geometry/plan/test-record.ts';
import type { Source } from '../../../geometry/rules/types.ts';
import type { Validity } from '../validity/validity.ts';

/** What a broken item comes to: results are not evaluated, a professional decides, or it is only written down. */
export type DeviationEffect = 'not-evaluated' | 'professional-review' | 'record-only';

/** One thing that has to be so in the house before and during a short-term test. */
export interface ConditionItem {
  /** Stable: plan files quote it. */
  readonly id: string;
  readonly name: string;
  /** What published texts ask, in our words. */
  readonly requirement: string;
  /** The same to the people in the house; empty where only the tester sees to it. */
  readonly notice: string;
  readonly deviationEffect: DeviationEffect;
  /** What to do about a break, beyond what every break of its kind asks. */
  readonly correction: string;
  readonly sources: readonly Source[];
  /** Where another published text says otherwise; left out where none is known to. */
  readonly conflict?: string;
  /** Left out of the list where the house has no such thing; left empty, it is always asked. */
  readonly onlyWith?: 'mitigation-system';
  /** Asked of a test of any term: all others are the closed house of a short one. */
  readonly anyTerm?: true;
  /** Every house has it: that there is none is no answer. */
  readonly everyHouse?: true;
}

/** An item and how the house keeps it. */
export interface ConditionRow {
  readonly item: ConditionItem;
  /** What it comes to: the log, or the drawing, may know better than the answer. */
  readonly state: ConditionState;
  /** What was answered. */
  readonly answered: ConditionState;
  /** Whether the house may have no such thing. */
  readonly canBeAbsent: boolean;
  /** Who saw the state; empty when it is not known, or when the answer was another one: nobody vouches for what they did not see. */
  readonly by: string;
  /** RFC 3339, or null when it is not known, as for `by`. */
  readonly at: string | null;
  readonly note: string;
  /** Seen kept before the pick-up that the plan has, and not looked at since. */
  readonly beforePickUp: boolean;
  /** What is drawn that the question is about; empty for nothing. */
  readonly drawnItems: string;
  /** Broken, and found before anything was measured. */
  readonly beforeStart: boolean;
  /** Null while it is not broken. */
  readonly effect: DeviationEffect | null;
  /** What the state comes to for this test, in sentences. */
  readonly text: string;
}

export interface ConditionsReport {
  readonly rows: readonly ConditionRow[];
  /** "holds" only when every item that applies is kept until the pick-up, or its break is one that is only written down. */
  readonly validity: Validity;
  /** The whole in a sentence. */
  readonly text: string;
}
