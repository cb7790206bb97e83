import { STAGE_NAME, type Stage, type StageState } from '../../advice/guidance.ts';
import { usePanels } from '../../commands/panels.ts';
import { commandById, runCommand } from '../../commands/table.ts';
import { later } from '../hooks/later.tsx';
import { useGuidance } from '../hooks/use-level.ts';
import './stage-bar.css';

const TestLine = later(() => import('../verdict/test-line.tsx').then((part) => part.TestLine));

/** The stages of the test and the state of the whole test, the same on every page. */
export function StageBar() {
  const stages = useGuidance();
  const next = stages.find(({ hints }) => hints.some((hint) => hint.missing));
  const open = usePanels((ui) => (ui.visitOpen ? null : ui.stage));
  return (
    <div className="stage-row">
      <nav className="stage-bar" aria-label="Stages of the test">
        <ol>
          {stages.map((state) => (
            <StageTab key={state.stage} state={state} open={state.stage === open} next={state.stage === next?.stage} />
          ))}
        </ol>
      </nav>
      <div className="stage-row__test">
        <TestLine stages={stages} />
      </div>
    </div>
  );
}

interface TabProps {
  readonly state: StageState;
  readonly open: boolean;
  readonly next: boolean;
}

function StageTab({ state: { stage, done, hints, whole }, open, next }: TabProps) {
  const missing = hints.some((hint) => hint.missing);
  return (
    <li>
      <button
        type="button"
        className="stage-bar__stage"
        data-next={next || undefined}
        aria-current={open ? 'page' : undefined}
        aria-labelledby={`tab-${stage}-name`}
        aria-describedby={`tab-${stage}-state`}
        onClick={() => runCommand(commandById(`stage-${stage}`))}
      >
        <span className="stage-bar__name" id={`tab-${stage}-name`}>
          {STAGE_NAME[stage]}
        </span>
        <span className="stage-bar__state" id={`tab-${stage}-state`}>
          <span className="stage-bar__mark">{markOf(stage, missing, next, whole)}</span>
          {done && <span className="unseen"> {done}</span>}
        </span>
      </button>
    </li>
  );
}

/** Returns the mark of a stage. It is not done while a step of it is in the future, even if nothing is missing. A sheet is ready, never done. */
function markOf(stage: Stage, missing: boolean, next: boolean, whole: boolean): string {
  if (whole) return stage === 'sheet' ? 'ready' : 'done';
  return missing && next ? 'next' : '';
}
