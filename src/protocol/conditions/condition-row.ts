import type { FixtureKind } from '../../../geometry/plan/model.ts';
import type { Condition, ConditionState } from '../../../geometry/plan/test-record.ts';
import type { Validity } from '../validity/validity.ts';

/** Effect of a deviation: results are not evaluated, or a professional decides. In neither case is the test valid. */
export type DeviationEffect = 'not-evaluated' | 'professional-review';

/** One item of the closed-building checklist. */
export interface ConditionItem {
  /** Never changed: plan files contain it. */
  readonly id: string;
  readonly name: string;
  readonly deviationEffect: DeviationEffect;
  /** How to correct a deviation, beyond what its effect requires. */
  readonly correction: string;
  /** Asked only if the building has this; left out, always asked. */
  readonly onlyWith?: 'mitigation-system';
  /** Asked for tests of any term; the others are closed-building conditions of short-term tests. */
  readonly anyTerm?: true;
  /** Whether every building has it: "not applicable" is not accepted. */
  readonly everyHouse?: true;
  /** A building with one of these drawn has it too. */
  readonly shownBy?: readonly FixtureKind[];
}

/** A checklist item with its state. */
export interface ConditionRow {
  readonly item: ConditionItem;
  /** The accepted state: the log or the drawing may contradict the answer. */
  readonly state: ConditionState;
  /** The recorded answer. */
  readonly answered: ConditionState;
  /** Whether "not applicable" is accepted. */
  readonly canBeAbsent: boolean;
  /** Who observed the state; empty where it is not recorded, or where the state is not the answer. */
  readonly by: string;
  /** When, RFC 3339; null as for `by`. */
  readonly at: string | null;
  readonly note: string;
  /** The other answers on record: one that the log or the drawing contradicts, then those of earlier inspections, in order of time. */
  readonly further: readonly Condition[];
  /** Whether it was observed as kept before the recorded pick-up, and not since. */
  readonly beforePickUp: boolean;
  /** A sentence with the drawn machines that the item is about; empty for none. */
  readonly drawnItems: string;
  /** Whether the state is a deviation that was observed before the start. */
  readonly beforeStart: boolean;
  /** Effect of the deviation; null without one. */
  readonly effect: DeviationEffect | null;
  /** What the state means for this test, in sentences. */
  readonly text: string;
}

export interface ConditionsReport {
  readonly rows: readonly ConditionRow[];
  /** "holds" only if every applicable item is kept until the pick-up. */
  readonly validity: Validity;
  /** The validity in a sentence. */
  readonly text: string;
}

/** Returns whether an accepted answer lacks its observer or its time. */
export const lacksObserverOrTime = ({
  state,
  answered,
  by,
  at,
}: Pick<ConditionRow, 'state' | 'answered' | 'by' | 'at'>): boolean =>
  answered !== 'unknown' && state === answered && (by === '' || at === null);
