import type { Tone } from '../../../geometry/messages/index.ts';
import type { XY } from '../../../geometry/plan/model.ts';
import type { VisitFacts } from '../../protocol/timing/visit-facts.ts';
import { isSplitText, type SplitText } from '../long-texts.ts';

/** What lies in the browser's own store. Every plan is read back through the same door as a file; times are ms since 1970. */

/** How the plan was looked at. */
export interface StoredView {
  readonly levelId: string;
  readonly selection: readonly string[];
  readonly viewport: { readonly scale: number; readonly x: number; readonly y: number } | null;
  /** Corners of walls that were being drawn, mm; left out by copies of an earlier time. */
  readonly corners?: readonly XY[];
}

/** What the list shows and searches, without the plan itself. */
export interface PlanSummary {
  /** Stands for the plan as long as it lives, in the page's address too. */
  readonly id: string;
  readonly title: string;
  /** The site's label. */
  readonly place: string;
  readonly createdAt: number;
  readonly changedAt: number;
  /** Name of the text, as `textName` makes it: the same plan twice has the same. */
  readonly hash: string;
  readonly roomNames: readonly string[];
  readonly detectorLabels: readonly string[];
  readonly levels: number;
  /** Start and end of the measurement, as the plan has them. */
  readonly start: string | null;
  readonly end: string | null;
  /** What the next date hangs on; left out by cards of an earlier time. */
  readonly visit?: VisitFacts;
  /** When it was put in the bin; null while it stands on the shelf. */
  readonly binnedAt: number | null;
  /** When the newest of its versions was saved; 0 for none. */
  readonly versionAt: number;
  /** False for a text that could not be read as a plan, and is kept to be saved as a file. */
  readonly readable: boolean;
}

/** One plan as it stands. */
export interface PlanText {
  readonly id: string;
  readonly text: SplitText;
  readonly savedAt: number;
  /** The tab that wrote it. */
  readonly tab: string;
  readonly view: StoredView;
}

/** Why a version is kept. Only a `rest`, which comes by itself, makes way for newer ones soon. */
export const VERSION_REASONS = ['rest', 'file', 'other-tab', 'brought-back', 'imported'] as const;
export type VersionReason = (typeof VERSION_REASONS)[number];

/** A plan as it stood earlier. */
export interface PlanVersion {
  readonly plan: string;
  readonly at: number;
  readonly why: VersionReason;
  readonly hash: string;
  readonly text: SplitText;
}

/** What is worked out from a plan for the list: made when it is first looked at. */
export interface PlanPreview {
  readonly id: string;
  /** The text that it was made of, and the build that made it: another of either and it is made again. */
  readonly hash: string;
  readonly edition: string;
  readonly verdicts: Readonly<Record<Tone, number>>;
  /** The state of the whole test in a word or two; its verdicts computed once. */
  readonly test: string;
  /** An SVG drawing; empty where nothing is drawn. */
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

/** How a plan is looked at that nobody has looked at yet. */
export const NO_VIEW: StoredView = { levelId: '', selection: [], viewport: null };
