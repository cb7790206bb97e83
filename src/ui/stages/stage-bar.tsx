import { useSyncExternalStore } from 'react';
import { STAGE_NAME, STAGES, type Stage, type StageState } from '../../advice/stages.ts';
import { usePanels } from '../../commands/panels.ts';
import { commandById, runCommand } from '../../commands/table.ts';
import { NotLoaded } from '../hooks/later.tsx';
import { GUIDANCE, useGuidance, useGuidancePart } from '../hooks/use-guidance.ts';
import './stage-bar.css';

/** The stages of the test and the state of the whole test, the same on every page. */
export function StageBar() {
  const stages = useGuidance();
  const TestLine = useGuidancePart()?.TestLine;
  const next = stages?.find(({ hints }) => hints.some((hint) => hint.missing));
  const open = usePanels((ui) => (ui.visitOpen ? null : ui.stage));
  return (
    <div className="stage-row">
      <nav className="stage-bar" aria-label="Stages of the test">
        <ol>
          {STAGES.map((stage, index) => (
            <StageTab
              key={stage}
              stage={stage}
              state={stages?.[index] ?? NOT_JUDGED}
              open={stage === open}
              next={stage === next?.stage}
            />
          ))}
        </ol>
      </nav>
      <div className="stage-row__test">{stages && TestLine ? <TestLine stages={stages} /> : <NotJudged />}</div>
    </div>
  );
}

/** What a stage shows while it is not judged: nothing. */
const NOT_JUDGED = { done: '', hints: [], whole: false } satisfies Omit<StageState, 'stage'>;

function NotJudged() {
  const isMissing = useSyncExternalStore(GUIDANCE.subscribe, () => GUIDANCE.isMissing);
  return <NotLoaded isMissing={isMissing} again={() => void GUIDANCE.request()} />;
}

interface TabProps {
  readonly stage: Stage;
  readonly state: Omit<StageState, 'stage'>;
  readonly open: boolean;
  readonly next: boolean;
}

function StageTab({ stage, state: { done, hints, whole }, open, next }: TabProps) {
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
