import { useEffect, useRef, useState } from 'react';
import { STAGE_NAME } from '../../advice/stages.ts';
import { isPlanInView, PAGE_STAGES, showPlan, usePanels } from '../../commands/panels.ts';
import { SHEET_ID } from '../../editor/open-menu.ts';
import { useLibrary } from '../../storage/library-state.ts';
import { usePressedStays } from '../hooks/use-pressed-stays.ts';
import { MessageLine } from '../shell/message-line.tsx';
import { OpenedStages } from './opened-stages.tsx';
import { PlanThumbnail } from './plan-thumbnail.tsx';
import { StageHints } from './stage-column.tsx';
import { VisitPage } from './visit/visit-page.tsx';
import './stage-page.css';

/** The page of a stage that has no column beside the plan, or the page of the two visits. Covers the whole width. */
export function StagePage() {
  const stage = usePanels((ui) => ui.stage);
  const visit = usePanels((ui) => ui.visitOpen);
  const onPlan = usePanels(isPlanInView);
  const plan = useLibrary(({ openId }) => openId);
  const [visitOpened, setVisitOpened] = useState(false);
  if (visit && !visitOpened) setVisitOpened(true);
  const heading = useRef<HTMLHeadingElement>(null);
  const pane = useRef<HTMLElement>(null);
  usePressedStays(pane, !onPlan);
  // Another page starts at its top.
  const page = visit ? 'visit' : stage;
  useEffect(() => {
    if (page) pane.current?.scrollTo(0, 0);
  }, [page]);
  useEffect(() => {
    if (page && isFocusGone()) (onPlan ? document.getElementById(SHEET_ID) : heading.current)?.focus();
  }, [page, onPlan]);
  return (
    <main className="stage-page" ref={pane} hidden={onPlan || undefined}>
      <div className="stage-page__head">
        <h2 ref={heading} tabIndex={-1}>
          {visit ? 'Visit' : STAGE_NAME[stage]}
        </h2>
        {!onPlan && <MessageLine />}
        <button type="button" className="stage-page__plan" onClick={showPlan}>
          <PlanThumbnail />
          <span>Plan</span>
        </button>
      </div>
      <div className="stage-page__body" hidden={visit || undefined}>
        {!visit && <StageHints stage={stage} />}
        <OpenedStages stages={PAGE_STAGES} open={stage} />
      </div>
      {visitOpened && (
        <div hidden={!visit || undefined}>
          <VisitPage key={plan} />
        </div>
      )}
    </main>
  );
}

/** Returns whether the focused element is hidden or removed, so that the focus would move to the body. */
function isFocusGone(): boolean {
  const { activeElement } = document;
  return !activeElement?.checkVisibility({ visibilityProperty: true }) || activeElement === document.body;
}
