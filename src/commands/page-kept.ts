import { useAppStore } from '../state/store.ts';
import { useLibrary } from '../storage/library-state.ts';
import { isStage, openStage, openVisit, showDialog, usePanels } from './panels.ts';

/** Key in the tab's storage, since every tab has its own open page. */
const KEY = 'stillspot-page';
/** Key in the browser's storage: id of the plan whose card was open last. A user of the card alone needs it again on the day of pick-up. */
const CARD_KEY = 'stillspot-card';

/**
 * Opens the page that was open in this tab before a reload, which a phone may cause when its camera is used, and stores the open page from
 * then on.
 * @param isSamePlan whether the last plan is open again: only then is the page opened
 */
export function keepPage(isSamePlan: boolean): void {
  const kept = read();
  if (isSamePlan) openKept(kept);
  // The quick card stores its own answers, even before there is a plan.
  const isCardOpen = kept.quickCard ?? (isSamePlan && cardOpenLast() === useLibrary.getState().openId);
  if (isCardOpen === true) showDialog({ kind: 'quick-card' });
  usePanels.subscribe(write);
  useAppStore.subscribe(({ levelId }, before) => {
    if (levelId !== before.levelId) write();
  });
  // The dialog of the quick card opens before its new plan does.
  useLibrary.subscribe(({ openId }, before) => {
    if (openId !== before.openId) write();
  });
}

function openKept({ stage, visitOpen, levelId }: Readonly<Record<string, unknown>>): void {
  const level = useAppStore.getState().plan.levels.find(({ id }) => id === levelId);
  // No fit to the view is needed: the first picture is drawn later and fits this level.
  if (level) useAppStore.setState({ levelId: level.id });
  if (isStage(stage)) openStage(stage);
  if (visitOpen === true) openVisit();
}

/** Returns the stored values; an empty object if there are none, or if the browser stores nothing. */
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
