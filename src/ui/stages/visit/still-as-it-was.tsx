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
  /** Why "as it was" cannot be recorded yet; empty if it can. */
  readonly waits: string;
}

/** Asks whether each detector is as it was left: not moved, covered or opened, its seal intact. The same answer as "Tampering" in the log. */
export function StillAsItWas({ plan, all, waits }: Props) {
  if (all.length === 0) return null;
  return (
    <section aria-labelledby="still-heading">
      <h3 id="still-heading">Still as it was?</h3>
      <p>Not moved, covered or opened; its seal whole.</p>
      {waits && <p>{waits}</p>}
      {all.map(({ id, name }) => (
        <fieldset key={id} className="still">
          <legend>{name}</legend>
          {ANSWERS.map(({ tampering, words }) => (
            <button
              key={tampering}
              type="button"
              className="button"
              disabled={tampering === 'none' && waits !== ''}
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
