import { type MouseEvent, type ReactNode, useEffect, useState } from 'react';
import { useKeyboard } from './commands/keyboard.ts';
import { isPlanInView, usePanels } from './commands/panels.ts';
import { SHEET_ID } from './editor/open-menu.ts';
import { NO_DOUBTS } from './state/second-opinion.ts';
import { selectLevel } from './state/selectors.ts';
import { useShown } from './state/shown.ts';
import { useAppStore } from './state/store.ts';
import { applyTheme } from './theme/theme.ts';
import { later, preloaded } from './ui/hooks/later.tsx';
import { useTypedSavedOnLeave } from './ui/hooks/use-typed-saved.ts';
import { AskedLength } from './ui/shell/asked-length.tsx';
import { AskedRoom } from './ui/shell/asked-room.tsx';
import { ErrorBoundary, type PlaceOnPage } from './ui/shell/error-boundary.tsx';
import { FaultLine } from './ui/shell/fault-line.tsx';
import { Foot } from './ui/shell/foot.tsx';
import { NewVersionLine } from './ui/shell/new-version-line.tsx';
import { SheetLine } from './ui/shell/sheet-line.tsx';
import { SideColumn } from './ui/shell/side.tsx';
import { TopBar } from './ui/shell/top-bar.tsx';
import { useColumns } from './ui/shell/use-columns.ts';
import { useHeightOfSelected } from './ui/shell/use-height-of-selected.ts';
import { useMovedButtonPress } from './ui/shell/use-moved-button-press.ts';
import { StageBar } from './ui/stages/stage-bar.tsx';
import { StageColumn } from './ui/stages/stage-column.tsx';
import './app.css';

// The sheet with its canvas library. Requested after the start bundle has run: on a slow connection it would delay everything else.
const PlanCanvas = preloaded(() => import('./editor/plan-canvas.tsx').then((part) => part.PlanCanvas));
// Shown over the sheet while nothing is drawn.
const EmptySheet = preloaded(() => import('./ui/stages/draw/empty-sheet.tsx').then((part) => part.EmptySheet));
const StagePage = later(() => import('./ui/stages/stage-page.tsx').then((part) => part.StagePage));
const DayBelowPlan = later(() => import('./ui/stages/place/sun-day.tsx').then((part) => part.DayBelowPlan));
const CommandMenu = later(() => import('./ui/menu/command-menu.tsx').then((part) => part.CommandMenu));
const Dialogs = later(() => import('./ui/shell/dialogs.tsx').then((part) => part.Dialogs));

// Loads the part of the canvas library for grips, rotation and snapping, which nothing else on the page needs.
const TracingFrame = later(() => import('./editor/overlay/tracing-frame.tsx').then((part) => part.default));

/**
 * The whole screen: the bar of the stages; below it the column of the stage on the left, the sheet in the middle and the verdict on the
 * right, or a page of a stage that covers all three.
 */
export function App() {
  return (
    <ErrorBoundary>
      <Page />
    </ErrorBoundary>
  );
}

function Page() {
  // The text that index.html shows until the app has started.
  useEffect(() => document.getElementById('starting')?.remove(), []);
  const theme = useAppStore((state) => state.theme);
  useEffect(() => applyTheme(theme), [theme]);
  // Renders the whole page when the doubts change: every part that shows a verdict depends on them.
  useAppStore(({ second }) => second?.doubts ?? NO_DOUBTS);
  const title = useAppStore((state) => state.plan.title.trim());
  useEffect(() => {
    document.title = title ? `${title} - Stillspot` : 'Stillspot';
  }, [title]);
  const isMenuOpen = useAppStore(({ menu }) => menu !== null);
  const isBare = useAppStore((state) => selectLevel(state).walls.length === 0);
  const onPlan = usePanels(isPlanInView);
  // Stays mounted once opened, so that it keeps what was typed into it.
  const [pageOpened, setPageOpened] = useState(false);
  if (!onPlan && !pageOpened) setPageOpened(true);
  const isPlaceFolded = usePanels(({ stage, jobFolded }) => stage === 'place' && jobFolded);
  const dayBelow = useShown(({ playsDay }) => playsDay) && isPlaceFolded;
  const asked = usePanels((ui) => ui.dialog !== null);
  const tracingByHand = useAppStore(({ tracingFrameOpen }) => tracingFrameOpen);
  useColumns();
  useMovedButtonPress();
  useTypedSavedOnLeave();
  useKeyboard();
  useHeightOfSelected();
  return (
    <div className="page" data-plan={onPlan ? 'in-view' : 'covered'}>
      <a className="skip" href={`#${SHEET_ID}`} onClick={skip}>
        {onPlan ? 'To the plan' : 'To the page'}
      </a>
      {guarded(<TopBar />, 'top')}
      {guarded(<StageBar />, 'bar')}
      {guarded(<StageColumn />, 'job')}
      <main className="sheet">
        <div>
          {guarded(<FaultLine />)}
          {guarded(<NewVersionLine />)}
          {onPlan && guarded(<SheetLine />)}
        </div>
        <div className="sheet__plan">
          {guarded(<PlanCanvas />, 'plan', SHEET_ID)}
          {guarded(<AskedLength />, 'plan')}
          {guarded(<AskedRoom />, 'plan')}
          {isBare && guarded(<EmptySheet />, 'plan')}
          {tracingByHand && guarded(<TracingFrame />, 'plan')}
        </div>
        {dayBelow && guarded(<DayBelowPlan />)}
        {guarded(<Foot />)}
      </main>
      {guarded(<SideColumn />, 'side')}
      {pageOpened && guarded(<StagePage />)}
      {asked && <div className="page__over">{guarded(<Dialogs />)}</div>}
      {isMenuOpen && guarded(<CommandMenu />)}
      {/* Filled by `ui/announce/announcer.ts`. */}
      <output className="unseen" id="announcer" aria-live="polite" />
    </div>
  );
}

/** Shows a fault of this part in its place and leaves the rest of the page working. */
const guarded = (part: ReactNode, place: PlaceOnPage = 'flow', id?: string) => (
  <ErrorBoundary place={place} id={id}>
    {part}
  </ErrorBoundary>
);

/** Moves the focus past the bars to the plan, or to the heading of the page that covers it. */
function skip(event: MouseEvent): void {
  event.preventDefault();
  const onPlan = isPlanInView(usePanels.getState());
  document.querySelector<HTMLElement>(onPlan ? `#${SHEET_ID}` : '.stage-page h2')?.focus();
}
