import type { Plan } from '../../../geometry/plan/model.ts';
import { chainOf, stepWords } from '../../job/log/chain.ts';
import { logOf, withLog } from '../../job/log/edit.ts';
import { saidInstant } from '../../job/timing/clock.ts';
import { useAppStore } from '../../state/store.ts';

interface Props {
  readonly plan: Plan;
  readonly detector: string;
  readonly name: string;
}

/** Where a detector was, step by step in order of time, with what does not fit beside it. */
export function ChainLines({ plan, detector, name }: Props) {
  const run = useAppStore((state) => state.run);
  const { steps } = chainOf(plan, detector);
  const drop = (index: number | null) =>
    run((now) => withLog(now, detector, { custody: logOf(now, detector).custody.filter((_, i) => i !== index) }));
  return (
    <>
      <h4 className="house-sub">From hand to hand</h4>
      {steps.length === 0 && <p className="small soft">Nothing yet. The times come from stage Time.</p>}
      <ol className="house-lines" aria-label={`${name}, from hand to hand`}>
        {steps.map((step) => {
          const words = stepWords(step);
          return (
            <li
              key={`${step.kind}${step.index ?? ''}`}
              className="house-line"
              data-doubt={step.doubts.length > 0 || undefined}
            >
              <strong>{words}</strong>
              <span className="log__when">
                {step.at === null ? 'time not known' : saidInstant(step.at, plan.site.timeZone)}
              </span>
              {step.note && <span>{step.note}</span>}
              {step.doubts.map((doubt) => (
                <span key={doubt} className="log__doubt">
                  {doubt}
                </span>
              ))}
              {step.kind === 'hand-over' && (
                <button
                  type="button"
                  className="text-button"
                  aria-label={`Take away: ${words}`}
                  onClick={() => drop(step.index)}
                >
                  Take away
                </button>
              )}
            </li>
          );
        })}
      </ol>
    </>
  );
}
