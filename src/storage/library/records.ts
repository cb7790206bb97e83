import type { Tone } from '../../../geometry/messages/index.ts';
import type { XY } from '../../../geometry/plan/model.ts';
import type { VisitFacts } from '../../protocol/timing/visit-facts.ts';
import { isSplitText, type SplitText } from '../long-texts.ts';

/** Records of the browser's store. Every plan is parsed like a file when it is read; times are ms since 1970. */

/** What was in view when the plan was stored. */
export interface StoredView {
  readonly levelId: string;
  readonly selection: readonly string[];
  readonly viewport: { readonly scale: number; readonly x: number; readonly y: number } | null;
  /** Corners of the run of walls that was being drawn, mm; missing in older records. */
  readonly corners?: readonly XY[];
}

/** The data of a plan that the library shows and searches. */
export interface PlanSummary {
  /** Permanent id of the plan, also used in the page's address. */
  readonly id: string;
  readonly title: string;
  /** The site's label. */
  readonly place: string;
  readonly createdAt: number;
  readonly changedAt: number;
  /** `textHash` of the text: equal plans have equal hashes. */
  readonly hash: string;
  readonly roomNames: readonly string[];
  readonly detectorLabels: readonly string[];
  readonly levels: number;
  /** Start and end of the measurement, as the plan has them. */
  readonly start: string | null;
  readonly end: string | null;
  /** Facts that the next date depends on; missing in older records. */
  readonly visit?: VisitFacts;
  /** When it was deleted; null if it is not deleted. */
  readonly binnedAt: number | null;
  /** When the newest of its versions was saved; 0 for none. */
  readonly versionAt: number;
  /** False if the text could not be read as a plan, and can only be saved as a file. */
  readonly readable: boolean;
}

/** The current state of a plan. */
export interface PlanText {
  readonly id: string;
  readonly text: SplitText;
  readonly savedAt: number;
  /** The tab that wrote it. */
  readonly tab: string;
  readonly view: StoredView;
}

/** Why a version is kept. Only a `rest`, which is made automatically, is soon deleted in favor of newer ones. */
export const VERSION_REASONS = ['rest', 'file', 'other-tab', 'brought-back', 'imported'] as const;
export type VersionReason = (typeof VERSION_REASONS)[number];

/** An earlier state of a plan. */
export interface PlanVersion {
  readonly plan: string;
  readonly at: number;
  readonly why: VersionReason;
  readonly hash: string;
  readonly text: SplitText;
}

/** Computed data of a plan that the library shows: made when the plan is first shown. */
export interface PlanPreview {
  readonly id: string;
  /** Hash of the text that it was made from, and the build that made it. It is made again if either has changed. */
  readonly hash: string;
  readonly edition: string;
  readonly verdicts: Readonly<Record<Tone, number>>;
  /** The state of the whole test in a word or two, from verdicts computed once. */
  readonly test: string;
  /** An SVG drawing; empty if nothing is drawn. */
  readonly picture: string;
}

export function isPlanText(value: unknown): value is PlanText {
  if (typeof value !== 'object' || value === null) return false;
  const { id, text, savedAt, tab, view } = value as Partial<Record<keyof PlanText, unknown>>;
  return (
    typeof id === 'string' &&
    isSplitText(text) &&
    typeof savedAt === 'number' &&
    typeof tab === 'string' &&
    isStoredView(view)
  );
}

export function isStoredView(value: unknown): value is StoredView {
  if (typeof value !== 'object' || value === null) return false;
  const { levelId, selection, corners = [] } = value as Partial<Record<keyof StoredView, unknown>>;
  return typeof levelId === 'string' && Array.isArray(selection) && Array.isArray(corners) && corners.every(isPoint);
}

function isPoint(value: unknown): value is XY {
  return Array.isArray(value) && value.length === 2 && value.every(Number.isFinite);
}

/** The view of a plan that was never opened. */
export const NO_VIEW: StoredView = { levelId: '', selection: [], viewport: null };
