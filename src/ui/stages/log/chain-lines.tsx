import type { Plan } from '../../../../geometry/plan/model.ts';
import { chainOf } from '../../../protocol/custody/chain.ts';
import { describeStep } from '../../../protocol/custody/describe-chain.ts';
import { detectorsOfHandOver, withoutHandOver } from '../../../protocol/custody/hand-overs.ts';
import { logEntryOf, withLogEntry } from '../../../protocol/custody/log-entries.ts';
import { MINUTE } from '../../../protocol/timing/clock.ts';
import { formatInstant } from '../../../protocol/timing/format-time.ts';
import { useAppStore } from '../../../state/store.ts';
import { useMinute } from '../../hooks/use-minute.ts';

interface Props {
  readonly plan: Plan;
  readonly detector: string;
  readonly name: string;
}

/** The chain of custody of a detector in order of time, with its discrepancies. */
export function ChainLines({ plan, detector, name }: Props) {
  const { steps } = chainOf(plan, detector);
  const now = useMinute() + MINUTE;
  return (
    <>
      <h4 className="log__sub">Chain of custody</h4>
      {steps.length === 0 && <p className="small soft">Nothing yet. The times come from the Time stage.</p>}
      <ol className="log__lines" aria-label={`${name}, chain of custody`}>
        {steps.map((step) => {
          const words = describeStep(step);
          return (
            <li
              key={`${step.kind}${step.index ?? ''}`}
              className="log__line"
              data-doubt={step.discrepancies.length > 0 || undefined}
            >
              <strong>{words}</strong>
              <span className="log__when">
                {step.at === null ? 'time not known' : formatInstant(step.at, plan.site.timeZone)}
                {step.at !== null && step.at > now && ', not yet'}
              </span>
              {step.note && <span>{step.note}</span>}
              {step.discrepancies.map((doubt) => (
                <span key={doubt} className="log__doubt">
                  {doubt}
                </span>
              ))}
              {step.index !== null && <TakeAway plan={plan} detector={detector} index={step.index} words={words} />}
            </li>
          );
        })}
      </ol>
    </>
  );
}

interface TakeAwayProps {
  readonly plan: Plan;
  readonly detector: string;
  readonly index: number;
  readonly words: string;
}

/** Removes a hand-over: of this detector, or of all detectors that were handed over in the same box. */
function TakeAway({ plan, detector, index, words }: TakeAwayProps) {
  const { run, say } = useAppStore.getState();
  const step = logEntryOf(plan, detector).custody[index];
  if (!step) return null;
  const box = detectorsOfHandOver(plan, step);
  const drop = (edit: (now: Plan) => Plan) => {
    if (!run(edit)) say('The transfer is removed. Undo restores it.');
  };
  const own = (now: Plan) =>
    withLogEntry(now, detector, { custody: logEntryOf(now, detector).custody.filter((_, i) => i !== index) });
  return (
    <div className="buttons">
      <button type="button" className="text-button" aria-label={`Remove: ${words}`} onClick={() => drop(own)}>
        Remove
      </button>
      {box.length > 1 && (
        <button
          type="button"
          className="text-button"
          aria-label={`Remove for all ${box.length}: ${words}`}
          onClick={() => drop((now) => withoutHandOver(now, box, step))}
        >
          For all {box.length}
        </button>
      )}
    </div>
  );
}
