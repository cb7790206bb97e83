import type { Plan } from '../../../../geometry/plan/model.ts';
import type { NamedDetector } from '../../../protocol/custody/detectors.ts';
import { logEntryOf } from '../../../protocol/custody/log-entries.ts';
import { writeTampering } from './visit-actions.ts';

const ANSWERS = [
  { tampering: 'none', words: 'As it was' },
  { tampering: 'seen', words: 'Not as it was' },
] as const;

interface Props {
  readonly plan: Plan;
  readonly all: readonly NamedDetector[];
}

/** Whether each detector lies as it was left: not moved, covered or opened, its seal whole. The same answer as "Tampering" in the log. */
export function StillAsItWas({ plan, all }: Props) {
  if (all.length === 0) return null;
  return (
    <section aria-labelledby="still-heading">
      <h3 id="still-heading">Still as it was?</h3>
      <p>Not moved, covered or opened; its seal whole.</p>
      {all.map(({ id, name }) => (
        <fieldset key={id} className="still">
          <legend>{name}</legend>
          {ANSWERS.map(({ tampering, words }) => (
            <button
              key={tampering}
              type="button"
              className="button"
              aria-pressed={logEntryOf(plan, id).tampering === tampering}
              onClick={() => writeTampering(id, name, tampering)}
            >
              {words}
            </button>
          ))}
        </fieldset>
      ))}
    </section>
  );
}
