import { amountsInUnit } from '../../protocol/results/radon.ts';
import { testHeadline } from '../../protocol/validity/headline.ts';
import { STAGE_BUTTON } from '../../protocol/validity/validity.ts';
import { useAppStore } from '../../state/store.ts';
import { testStateOf } from '../../state/test-state.ts';
import './test-line.css';
import { openStage } from '../../commands/panels.ts';
import { VerdictMark } from './verdict-mark.tsx';

/** The state of the whole test, the same on every screen: never greener than its worst part. */
export function TestLine() {
  const plan = useAppStore((state) => state.plan);
  const { tone, head, text, more, stage } = testHeadline(plan, testStateOf(plan));
  return (
    <section className="test-line" data-tone={tone} aria-label="The whole test">
      <p className="test-line__head">
        <VerdictMark verdict={tone} size={18} />
        <span>
          The test: <strong>{head}</strong>
        </span>
      </p>
      <div className="test-line__says">
        <p className="small">
          {amountsInUnit(plan.display.radon, text)}
          {more > 0 && ` And ${more} more.`}
        </p>
        {stage && (
          <button type="button" className="text-button" onClick={() => openStage(stage)}>
            {STAGE_BUTTON[stage]}
          </button>
        )}
      </div>
    </section>
  );
}

/** The same on the folded column, along its strip. */
export function TestMark() {
  const plan = useAppStore((state) => state.plan);
  const { tone, head } = testHeadline(plan, testStateOf(plan));
  return (
    <p className="test-mark" data-tone={tone}>
      <VerdictMark verdict={tone} size={18} />
      <span>
        The test: <strong>{head}</strong>
      </span>
    </p>
  );
}
