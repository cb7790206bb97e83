import { useRef } from 'react';
import type { Hint } from '../../advice/guidance/hint.ts';
import { STAGE_NAME, type Stage, type StageState } from '../../advice/stages.ts';
import { fold, PLAN_STAGES, unfold, usePanels } from '../../commands/panels.ts';
import { later } from '../hooks/later.tsx';
import { useGuidance } from '../hooks/use-guidance.ts';
import { useLevel } from '../hooks/use-level.ts';
import { usePressedStays } from '../hooks/use-pressed-stays.ts';
import { Hints } from './hints.tsx';
import { OpenedStages } from './opened-stages.tsx';
import './stage-column.css';

const LevelItems = later(() => import('../inspector/item-list.tsx').then((part) => part.LevelItems));

/** The work of the stages beside the plan, and the list of all items of the level. */
export function StageColumn() {
  const open = usePanels((ui) => ui.planStage);
  const folded = usePanels((ui) => ui.jobFolded);
  const column = useRef<HTMLElement>(null);
  usePressedStays(column, !folded);
  if (folded) {
    return (
      <section className="job job--folded" aria-label={`${STAGE_NAME[open]}, folded`}>
        <button type="button" className="rail" onClick={() => unfold('job')}>
          {STAGE_NAME[open]} panel
        </button>
      </section>
    );
  }
  return (
    <section className="job" aria-labelledby="job-heading" ref={column}>
      <div className="job__head">
        <h2 id="job-heading">{STAGE_NAME[open]}</h2>
        <button type="button" className="text-button" onClick={() => fold('job')}>
          Fold<span className="unseen"> away: {STAGE_NAME[open]}</span>
        </button>
      </div>
      <StageHints stage={open} />
      <OpenedStages stages={PLAN_STAGES} open={open} />
      <Things />
    </section>
  );
}

/** The list of items. For an empty level it is not shown, and its code is not loaded. */
function Things() {
  const { detectors, rooms, walls, openings, fixtures, objects } = useLevel();
  const some = [detectors, rooms, walls, openings, fixtures, objects].some(({ length }) => length > 0);
  return some && <LevelItems />;
}

/** The hints of a stage, above its work. */
export function StageHints({ stage }: { readonly stage: Stage }) {
  const shown = hintsOf(useGuidance() ?? [], stage).filter(isNotRepeatedBelow);
  return shown.length > 0 && <Hints hints={shown} />;
}

const hintsOf = (stages: readonly StageState[], stage: Stage): readonly Hint[] =>
  stages.find((state) => state.stage === stage)?.hints ?? [];

/**
 * Returns whether a hint is shown at the heading. A hint that opens a stage is repeated by the panel below, with the same button, and one
 * that starts the outline by the first question; of the open questions only the next one is shown, because each shows its own.
 */
function isNotRepeatedBelow({ action }: Hint, index: number, hints: readonly Hint[]): boolean {
  if (action?.kind === 'question') return hints.findIndex((each) => each.action?.kind === 'question') === index;
  return action?.kind !== 'stage' && !(action?.kind === 'tool' && action.tool.kind !== 'detector');
}
