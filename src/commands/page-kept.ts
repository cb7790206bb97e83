import { useAppStore } from '../state/store.ts';
import { isStage, openStage, openVisit, showDialog, usePanels } from './panels.ts';

/** In the storage of the tab: another tab has a page of its own open. */
const KEY = 'stillspot-page';

/**
 * Opens the page that was open in this tab before it was loaded again, as a phone does when its camera was open, and keeps it from then on.
 * @param isSamePlan whether the plan of last time is open again: only then is the page opened
 */
export function keepPage(isSamePlan: boolean): void {
  const kept = read();
  if (isSamePlan) openKept(kept);
  // Its answers are stored by themselves, before there is a plan.
  if (kept.quickCard === true) showDialog({ kind: 'quick-card' });
  usePanels.subscribe(write);
  useAppStore.subscribe(({ levelId }, before) => {
    if (levelId !== before.levelId) write();
  });
}

function openKept({ stage, visitOpen, levelId }: Readonly<Record<string, unknown>>): void {
  const level = useAppStore.getState().plan.levels.find(({ id }) => id === levelId);
  // The first picture comes later, and fits the level into the view.
  if (level) useAppStore.setState({ levelId: level.id });
  if (isStage(stage)) openStage(stage);
  if (visitOpen === true) openVisit();
}

/** Returns what was kept; an empty object where nothing was, or where the browser keeps nothing. */
function read(): Readonly<Record<string, unknown>> {
  try {
    const kept: unknown = JSON.parse(sessionStorage.getItem(KEY) ?? '');
    return typeof kept === 'object' && kept !== null ? { ...kept } : {};
  } catch {
    return {};
  }
}

function write(): void {
  const { stage, visitOpen, dialog } = usePanels.getState();
  const { levelId } = useAppStore.getState();
  try {
    sessionStorage.setItem(
      KEY,
      JSON.stringify({ stage, visitOpen, levelId, quickCard: dialog?.kind === 'quick-card' }),
    );
  } catch {
    // Blocked or full: the page then opens as on a first visit.
  }
}
