import { lowerFirst } from '../../../geometry/plan/nouns.ts';
import type { QuestionId } from '../../advice/walk-round.ts';
import { noneHereId } from '../../commands/go-to.ts';
import { useAppStore } from '../../state/store.ts';
import { whoAndWhen } from '../stages/house/state-words.ts';
import { answerNone, takeBackNone } from './answer-none.ts';
import { useLooks } from './question-state.tsx';
import './none-here.css';

/** The answer "none here" to a question, one button for each thing that it looks for, except those that are drawn. */
export function NoneHere({ id }: { readonly id: QuestionId }) {
  const zone = useAppStore(({ plan }) => plan.site.timeZone);
  const rows = useLooks(id).filter(({ state }) => state !== 'drawn');
  if (rows.length === 0) return null;
  return (
    <ul className="none-here">
      {rows.map(({ rule, absent, state, by, at }) => {
        const answered = state === 'none';
        return (
          <li key={rule.id}>
            <button
              type="button"
              id={noneHereId(rule.id)}
              className="button none-here__button"
              aria-pressed={answered}
              onClick={() => (answered ? takeBackNone(rule.id) : answerNone(rule.id))}
            >
              None here: {lowerFirst(absent)}
            </button>
            {answered && <p className="none-here__who">{whoAndWhen({ by, at }, zone)}. A second press clears it.</p>}
          </li>
        );
      })}
    </ul>
  );
}
