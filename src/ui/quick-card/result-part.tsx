import type { Plan } from '../../../geometry/plan/model.ts';
import { openStage } from '../../commands/panels.ts';
import { RESULT_CAUTIONS } from '../../protocol/results/describe-location.ts';
import { STAGE_BUTTON } from '../../protocol/validity/validity.ts';
import { plainResult } from '../../quick-card/plain-result.ts';
import { testStateOf } from '../../state/test-state.ts';

/** The meaning of the result, once there is one, with buttons that lead to missing entries. */
export function ResultPart({ plan, onClose }: { readonly plan: Plan; readonly onClose: () => void }) {
  const result = plainResult(plan, testStateOf(plan));
  if (!result) return null;
  return (
    <section className="quick-card__result" aria-label="The result">
      <h3>{result.value}</h3>
      <p>{result.text}</p>
      {result.issues.length > 0 && (
        <ul className="quick-card__list">
          {result.issues.map(({ text, stage }) => (
            <li key={`${stage} ${text}`}>
              <p>{text}</p>
              <button
                type="button"
                className="button"
                onClick={() => {
                  openStage(stage);
                  onClose();
                }}
              >
                {STAGE_BUTTON[stage]}
              </button>
            </li>
          ))}
        </ul>
      )}
      <p className="small soft">{RESULT_CAUTIONS.join(' ')}</p>
    </section>
  );
}
