import { lazy, Suspense, useEffect } from 'react';
import { PlanCanvas } from './canvas/plan-canvas.tsx';
import { useTracingFrame } from './canvas/tracing-frame-store.ts';
import { applyTheme } from './design/theme.ts';
import { EmptySheet } from './panels/empty-sheet.tsx';
import { ErrorBoundary } from './panels/error-boundary.tsx';
import { Foot } from './panels/foot.tsx';
import { JobColumn } from './panels/job-column.tsx';
import { later } from './panels/later.tsx';
import { LiveRegion } from './panels/live-region.tsx';
import { useActKeys } from './panels/menu/use-act-keys.ts';
import { useClipboardKeys } from './panels/menu/use-clipboard.ts';
import { MessageLine } from './panels/message-line.tsx';
import { NewVersionLine } from './panels/new-version-line.tsx';
import { usePageKeys } from './panels/page-keys.ts';
import { usePaletteKeys } from './panels/palette-keys.ts';
import { Side } from './panels/side.tsx';
import { TopBar } from './panels/top-bar.tsx';
import { useUi } from './panels/ui.ts';
import { useColumns } from './panels/use-columns.ts';
import { useFileDrop } from './panels/use-file-drop.ts';
import { useHeldPress } from './panels/use-held-press.ts';
import { useShadeForSelected } from './panels/use-shade.ts';
import { useMenu } from './state/menu.ts';
import { NO_DOUBTS } from './state/second.ts';
import { useAppStore } from './state/store.ts';
import './app.css';

const ActMenu = later(() => import('./panels/menu/act-menu.tsx').then((part) => part.ActMenu));
const Dialogs = later(() => import('./panels/dialogs.tsx').then((part) => part.Dialogs));

// Grips, turning and snapping of a frame are what the canvas library is for; nothing else of the page needs it.
const TracingFrame = lazy(() => import('./canvas/tracing-frame.tsx'));

/** The whole screen: the job on the left, the sheet in the middle, the slip beside it. */
export function App() {
  return (
    <ErrorBoundary>
      <Page />
    </ErrorBoundary>
  );
}

function Page() {
  const theme = useAppStore((state) => state.theme);
  useEffect(() => applyTheme(theme), [theme]);
  // A doubt about a verdict concerns every part of the page that shows one.
  useAppStore(({ second }) => second?.doubts ?? NO_DOUBTS);
  const title = useAppStore((state) => state.plan.title.trim());
  useEffect(() => {
    document.title = title ? `${title} - Stillspot` : 'Stillspot';
  }, [title]);
  const listsActs = useMenu((menu) => menu.ask !== null);
  const asked = useUi((ui) => ui.dialog !== null);
  const tracingByHand = useTracingFrame((frame) => frame.open);
  useColumns();
  useFileDrop();
  useHeldPress();
  usePaletteKeys();
  usePageKeys();
  useActKeys();
  useClipboardKeys();
  useShadeForSelected();
  return (
    <div className="page">
      <TopBar />
      <JobColumn />
      <main className="sheet">
        <div>
          <NewVersionLine />
          <MessageLine />
        </div>
        <div className="sheet__plan">
          <PlanCanvas />
          <EmptySheet />
          {tracingByHand && (
            <Suspense>
              <TracingFrame />
            </Suspense>
          )}
        </div>
        <Foot />
      </main>
      <Side />
      {asked && (
        <div className="page__over">
          <Dialogs />
        </div>
      )}
      {listsActs && <ActMenu />}
      <LiveRegion />
    </div>
  );
}
