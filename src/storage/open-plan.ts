import { create } from 'zustand';
import type { Plan } from '../../geometry/plan/model.ts';
import { writePlan } from '../../geometry/planfile/write.ts';
import { freshPlan } from '../state/fresh-plan.ts';
import { freshId } from './fresh-id.ts';

/** Which plan of the shelf lies on the sheet. */
interface OpenPlan {
  readonly id: string;
  /** Whether it lies on the shelf already; a sheet on which nothing was drawn does not. */
  readonly inLibrary: boolean;
}

export const useOpenPlan = create<OpenPlan>()(() => ({ id: freshId(), inLibrary: false }));

/** Counts up when anything on the shelf has changed, here or in another tab: lists read it afresh. */
export const useLibraryChanges = create<{ readonly count: number }>()(() => ({ count: 0 }));

const CHANNEL = 'stillspot-plan';
/** What tabs tell each other. */
export interface TabNews {
  /** The plan that was written, and when; without it something else on the shelf has changed. */
  readonly id?: string;
  readonly savedAt?: number;
}

let channel: BroadcastChannel | null = null;

/** Listens to the other tabs. Returns what ends it. */
export function listenToTabs(hear: (news: TabNews) => void): () => void {
  if (typeof BroadcastChannel === 'undefined') return () => undefined;
  channel = new BroadcastChannel(CHANNEL);
  channel.onmessage = ({ data }: MessageEvent<unknown>) => {
    useLibraryChanges.setState(({ count }) => ({ count: count + 1 }));
    if (typeof data === 'object' && data !== null) hear(data as TabNews);
  };
  return () => {
    channel?.close();
    channel = null;
  };
}

/** Tells this page's lists and the other tabs. */
export function announceLibraryChange(news: TabNews = {}): void {
  useLibraryChanges.setState(({ count }) => ({ count: count + 1 }));
  channel?.postMessage(news);
}

/** Whether there is anything that one would miss: all but the units of length is more than a fresh sheet has. */
export function hasWork(plan: Plan): boolean {
  const fresh = freshPlan();
  return writePlan({ ...plan, display: fresh.display }) !== writePlan(fresh);
}
