import type { Plan } from '../../geometry/plan/model.ts';
import { memoizeLatest } from '../../geometry/plane/memoize.ts';
import { writePlan } from '../../geometry/planfile/write.ts';
import { freshPlan } from '../state/fresh-plan.ts';
import { useLibrary } from './library-state.ts';

const CHANNEL = 'stillspot-plan';
/** Messages between tabs. */
export interface TabNews {
  /** Id of the plan that was written, and when, ms since 1970; without an id something else in the library has changed. */
  readonly id?: string;
  readonly savedAt?: number;
  /** Hash of the plan's text; only sent by autosave. */
  readonly hash?: string;
}

let channel: BroadcastChannel | null = null;

/** Listens to the other tabs. Returns the function that stops it. */
export function listenToTabs(hear: (news: TabNews) => void): () => void {
  if (typeof BroadcastChannel === 'undefined') return () => undefined;
  channel = new BroadcastChannel(CHANNEL);
  channel.onmessage = ({ data }: MessageEvent<unknown>) => {
    useLibrary.setState(({ changes }) => ({ changes: changes + 1 }));
    if (typeof data === 'object' && data !== null) hear(data as TabNews);
  };
  return () => {
    channel?.close();
    channel = null;
  };
}

/** Announces a change of the library to this page's lists and to the other tabs. */
export function announceLibraryChange(news: TabNews = {}): void {
  useLibrary.setState(({ changes }) => ({ changes: changes + 1 }));
  channel?.postMessage(news);
}

/** Returns the plan as the text of its file. The latest is memoized: opening a plan needs its text for a lookup and again for storing. */
export const planText = memoizeLatest(writePlan);

/** Returns whether the plan differs from a new one in more than its units. */
export function hasWork(plan: Plan): boolean {
  return planText(plan) !== writePlan({ ...freshPlan(), display: plan.display });
}
