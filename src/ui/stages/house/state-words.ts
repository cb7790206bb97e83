import type { Verdict } from '../../../../geometry/check/types.ts';
import type { Look } from '../../../../geometry/edit/index.ts';
import { listed } from '../../../../geometry/messages/index.ts';
import type { Condition, ConditionState } from '../../../../geometry/plan/test-record.ts';
import type { ConditionRow } from '../../../protocol/conditions/condition-row.ts';
import { msOf } from '../../../protocol/timing/clock.ts';
import { formatInstant } from '../../../protocol/timing/format-time.ts';
import type { Validity } from '../../../protocol/validity/validity.ts';

/** The answers to a condition, in the order of the buttons. */
export const ANSWERS = [
  { state: 'kept', words: 'Met' },
  { state: 'broken', words: 'Not met' },
  { state: 'not-applicable', words: 'Not applicable' },
] as const satisfies readonly { readonly state: ConditionState; readonly words: string }[];

export const STATE_WORDS: Readonly<Record<ConditionState, string>> = {
  kept: 'Met',
  broken: 'Not met',
  'not-applicable': 'Not applicable',
  unknown: 'Not known',
};

/** The verdict mark for each answer, so that color is not the only sign. A condition that does not apply has none. */
const STATE_MARK: Readonly<Record<ConditionState, Verdict | null>> = {
  kept: 'clear',
  broken: 'blocked',
  'not-applicable': null,
  unknown: 'unknown',
};

/** Returns the mark of a condition: unknown as long as it was seen only before the pick-up. */
export const markOf = ({ state, beforePickUp }: ConditionRow): Verdict | null =>
  STATE_MARK[beforePickUp ? 'unknown' : state];

/** The state of all conditions in a word, and its mark. */
export const WHOLE: Readonly<Record<Validity, { readonly word: string; readonly mark: Verdict }>> = {
  holds: { word: 'Met', mark: 'clear' },
  'not-evaluated': { word: 'Invalid, do not use', mark: 'blocked' },
  unknown: { word: 'Unknown', mark: 'unknown' },
};

/**
 * Returns "Met: R. Alder, Saturday 7 March, 18:00", or "Met so far: ..." if that was before the pick-up; says if name or time is not
 * recorded. `zone`: IANA zone of the house.
 */
export function answerLine({ state, answered, by, at, beforePickUp }: ConditionRow, zone: string): string {
  if (state !== answered) return overruled(state, answered);
  if (state === 'unknown') return STATE_WORDS[state];
  const word = beforePickUp ? 'Met so far' : STATE_WORDS[state];
  return `${word}: ${whoAndWhen({ by, at }, zone)}`;
}

/** Returns "Also on record: met, R. Alder, Saturday 7 March, 18:00. From outside.", with the note at the end. */
export function furtherLine({ state, by = '', at, note }: Condition, zone: string): string {
  const answer = `Also on record: ${STATE_WORDS[state].toLowerCase()}, ${whoAndWhen({ by: by.trim(), at }, zone)}.`;
  return [answer, note.trim()].filter(Boolean).join(' ');
}

/** Returns "R. Alder, Saturday 7 March, 18:00"; says if name or time is not recorded. */
export function whoAndWhen({ by, at }: Look, zone: string): string {
  const time = msOf(at);
  const when = time === null ? '' : formatInstant(time, zone);
  const known = [by, when].filter(Boolean).join(', ');
  const lacks = [by ? '' : 'who', when ? '' : 'when'].filter(Boolean);
  const missing = lacks.length > 0 ? `${listed(lacks)} not recorded` : '';
  return [known, missing].filter(Boolean).join('; ');
}

/** Returns the words for a state that differs from the answer, because the log has a deviation, or because the condition applies to every house. */
function overruled(state: ConditionState, answered: ConditionState): string {
  const answer = answered === 'unknown' ? '' : ` (the answer was: ${STATE_WORDS[answered].toLowerCase()})`;
  return `${STATE_WORDS[state]}${state === 'broken' ? ', according to the log' : ''}${answer}`;
}
