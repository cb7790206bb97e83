import { useAppStore } from '../state/store.ts';
import { useLibrary } from '../storage/library-state.ts';
import { isStage, openStage, openVisit, showDialog, usePanels } from './panels.ts';

/** In the storage of the tab: another tab has a page of its own open. */
const KEY = 'stillspot-page';
/** In the storage of the browser: the plan whose card was open last. Whoever has only the card looks for it on the day of the pick-up. */
const CARD_KEY = 'stillspot-card';

/**
 * Opens the page that was open in this tab before it was loaded again, as a phone does when its camera was open, and keeps it from then on.
 * @param isSamePlan whether the plan of last time is open again: only then is the page opened
 */
export function keepPage(isSamePlan: boolean): void {
  const kept = read();
  if (isSamePlan) openKept(kept);
  // Its answers are stored by themselves, before there is a plan.
  const isCardOpen = kept.quickCard ?? (isSamePlan && cardOpenLast() === useLibrary.getState().openId);
  if (isCardOpen === true) showDialog({ kind: 'quick-card' });
  usePanels.subscribe(write);
  useAppStore.subscribe(({ levelId }, before) => {
    if (levelId !== before.levelId) write();
  });
  // The card of a new plan is open before the plan is.
  useLibrary.subscribe(({ openId }, before) => {
    if (openId !== before.openId) write();
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

function cardOpenLast(): string | null {
  try {
    return localStorage.getItem(CARD_KEY);
  } catch {
    return null;
  }
}

function write(): void {
  const { stage, visitOpen, dialog } = usePanels.getState();
  const { levelId } = useAppStore.getState();
  const quickCard = dialog?.kind === 'quick-card';
  try {
    sessionStorage.setItem(KEY, JSON.stringify({ stage, visitOpen, levelId, quickCard }));
    localStorage.setItem(CARD_KEY, quickCard ? useLibrary.getState().openId : '');
  } catch {
    // Blocked or full: the page then opens as on a first visit.
  }
}
