import { levelHeading } from '../../../geometry/plan/nouns.ts';
import { useSketch } from '../../editor/overlay/sketch.ts';
import { selectLevel } from '../../state/selectors.ts';
import { useAppStore } from '../../state/store.ts';
import { useLibrary } from '../../storage/library-state.ts';
import { planNews, type SeenHistory, seenHistory } from './plan-news.ts';
import { selectionWords, toolWords } from './session-news.ts';
import {
  type DetectorVerdicts,
  detectorNews,
  detectorVerdicts,
  testNews,
  testVerdicts,
  type Verdicts,
} from './verdict-news.ts';

/** Long enough that a drag across a zone is announced once, ms. */
const REST_MS = 500;

/** The state that was announced last: only differences from it are announced. */
interface Heard {
  readonly history: SeenHistory;
  readonly openId: string | null;
  readonly levelId: string;
  readonly selection: readonly string[];
  readonly detectors: DetectorVerdicts;
  readonly test: Verdicts;
  readonly tool: string;
  readonly message: string;
}

/**
 * Announces changes in the only live region of the page, once nothing has changed for a moment: selection, moves with their distances,
 * deletions, undo, changed verdicts, messages, and what Enter does at the crosshair.
 */
export function startAnnouncer(region: HTMLElement): void {
  // The whole text is read, even if only its end is new.
  region.ariaAtomic = 'true';
  let heard = hear(null);
  let timer: ReturnType<typeof setTimeout> | undefined;
  const tell = () => {
    const before = heard;
    heard = hear(before);
    const news = newsSince(before, heard);
    if (news) region.textContent = news === region.textContent ? `${news}\u00a0` : news;
  };
  const wait = () => {
    clearTimeout(timer);
    timer = setTimeout(tell, REST_MS);
  };
  for (const store of [useAppStore, useSketch, useLibrary]) store.subscribe(wait);
}

function hear(before: Heard | null): Heard {
  const state = useAppStore.getState();
  const history = seenHistory();
  return {
    history,
    openId: useLibrary.getState().openId,
    levelId: selectLevel(state).id,
    selection: state.selection,
    detectors: detectorVerdicts(),
    test: before?.history.plan === history.plan ? before.test : testVerdicts(history.plan),
    tool: toolWords(),
    message: document.querySelector('.message > p')?.textContent ?? '',
  };
}

function newsSince(before: Heard, now: Heard): string {
  const state = useAppStore.getState();
  if (now.openId !== before.openId && now.history.plan !== before.history.plan)
    return `${state.plan.title.trim() || 'A plan without a title'} is open. ${now.message}`.trim();
  const edit = planNews(before.history);
  const level = selectLevel(state);
  return [
    now.levelId === before.levelId ? '' : `${levelHeading(level)} is in view.`,
    edit,
    // The edit already names the items that were added, moved or deleted.
    edit || sameIds(now.selection, before.selection) ? '' : selectionWords(),
    ...detectorNews(before.detectors, now.detectors),
    ...testNews(before.test, now.test),
    now.message === before.message || now.message === edit ? '' : now.message,
    now.tool === before.tool ? '' : now.tool,
  ]
    .filter(Boolean)
    .join(' ');
}

const sameIds = (a: readonly string[], b: readonly string[]): boolean =>
  a.length === b.length && a.every((id) => b.includes(id));
