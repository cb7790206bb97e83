import type { StageState } from '../../advice/stages.ts';
import { openStage, usePanels } from '../../commands/panels.ts';
import { headlineDetail, testHeadline } from '../../protocol/validity/headline.ts';
import { STAGE_BUTTON } from '../../protocol/validity/validity.ts';
import { useAppStore } from '../../state/store.ts';
import { testStateOf } from '../../state/test-state.ts';
import { later } from '../hooks/later.tsx';
import { CommandButton } from '../shell/command-button.tsx';
import { StillToDo } from '../stages/still-to-do.tsx';
import { VerdictMark } from './verdict-mark.tsx';
import './test-line.css';

/** Loaded separately: the published lists are not part of the start bundle. */
const NotRecorded = later(() => import('./not-recorded.tsx').then((part) => part.NotRecorded), true);

/**
 * The state of the whole test, the same on every page, never better than its worst part. Its height does not depend on the text, so that
 * nothing below it moves; the list shows the text in full.
 */
export function TestLine({ stages }: { readonly stages: readonly StageState[] }) {
  const plan = useAppStore((state) => state.plan);
  const onVisit = usePanels((ui) => ui.visitOpen);
  const state = testStateOf(plan);
  const { tone, head, stage } = testHeadline(plan, state);
  const isValid = state.validity === 'holds';
  const says = (
    <>
      {isValid && <NotRecorded plan={plan} />}
      {headlineDetail(plan, state)}
    </>
  );
  return (
    <section className="test-line" data-tone={tone} aria-label="The whole test">
      <p className="test-line__head">
        <VerdictMark verdict={tone} size={18} />
        <span>
          The test: <strong>{head}</strong>
          {isValid && stage === null && (
            <span className="test-line__brief" aria-hidden="true">
              <NotRecorded plan={plan} brief />
            </span>
          )}
        </span>
      </p>
      <p className="test-line__says">{says}</p>
      {stage && (
        <button type="button" className="text-button test-line__fix" onClick={() => openStage(stage)}>
          {STAGE_BUTTON[stage]}
        </button>
      )}
      <StillToDo stages={stages} lead={says} />
      <CommandButton command="visit" className="button test-line__visit" aria-current={onVisit ? 'page' : undefined} />
    </section>
  );
}
