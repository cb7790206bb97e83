import { create } from 'zustand';
import type { ItemRow } from '../../geometry/edit/row.ts';
import type { Stage } from '../advice/stages.ts';
import type { QuestionId } from '../advice/walk-round.ts';
import type { VisitDocument } from '../report/documents/draw-document.ts';
import type { PageChoice } from '../report/paper.ts';
import type { FileProblem } from '../storage/plan-files.ts';

/** Whether a saved file includes the pictures under the levels; asked once for the same pictures. */
export type PictureChoice = 'ask' | 'with' | 'without';

/** A dialog that covers the page until it is answered or closed. */
export type Dialog =
  | {
      readonly kind: 'refused';
      readonly name: string;
      readonly problems: readonly FileProblem[];
      readonly after?: 'plans';
    }
  | { readonly kind: 'plans' }
  /** The open plan is not stored, for the reason `why`; `go` opens the other plan anyway. */
  | { readonly kind: 'leave'; readonly why: string; readonly go: () => void }
  | { readonly kind: 'keys' }
  /** One room and one kit: the questions of the quick card, then the card. */
  | { readonly kind: 'quick-card' }
  | { readonly kind: 'quality' }
  /** Asks whether a saved file includes the pictures under the levels. */
  | { readonly kind: 'pictures'; readonly take: (choice: PictureChoice) => void }
  | { readonly kind: 'sheet'; readonly choice: PageChoice; readonly showTracing: boolean }
  /** One of the documents of the job. */
  | { readonly kind: 'paper'; readonly choice: PageChoice; readonly which: VisitDocument };

/** The stages with a column beside the plan; each of the others has its own page. */
export const PLAN_STAGES = ['site', 'draw', 'place'] as const satisfies readonly Stage[];
type PlanStage = (typeof PLAN_STAGES)[number];

/** The stages with their own page. */
export const PAGE_STAGES = ['time', 'house', 'log', 'read', 'sheet'] as const satisfies readonly Stage[];

/** Returns whether a value of any kind is the id of a stage. */
export const isStage = (value: unknown): value is Stage =>
  [...PLAN_STAGES, ...PAGE_STAGES].some((each) => each === value);

const isPlanStage = (stage: Stage): stage is PlanStage => PLAN_STAGES.some((each) => each === stage);

interface UiState {
  readonly stage: Stage;
  /** The last open stage beside the plan: going back from a page leads there. */
  readonly planStage: PlanStage;
  /** Whether the page of the two visits covers the page of the stage. */
  readonly visitOpen: boolean;
  readonly question: QuestionId | null;
  readonly dialog: Dialog | null;
  /** Whether a column is folded to a strip, to leave the sheet more room. */
  readonly jobFolded: boolean;
  readonly sideFolded: boolean;
  /** Whether the numbers of the selected detector show under its verdict. */
  readonly numbersOpen: boolean;
  /** Whether all that is still to do is listed over the stages. */
  readonly toDoOpen: boolean;
  /** Whether the tools for the picture under the level are open. */
  readonly tracingOpen: boolean;
  /** Whether the fields of a row of items are open, and their values: those of the last row. */
  readonly rowOpen: boolean;
  readonly row: ItemRow;
  /** The last answer about the pictures in a saved file. */
  readonly savedPictures: SavedPictures;
}

export interface SavedPictures {
  readonly choice: PictureChoice;
  /** The pictures that the answer was given for; for others it is asked again. */
  readonly images: readonly string[];
}

/** Registers every 6 ft: common practice, no published source. */
const FIRST_ROW: ItemRow = { more: 3, spacing: 1828.8, direction: 0 };

/** Which panels are open, and the last values of their fields: neither in the plan nor in the history. */
export const usePanels = create<UiState>()(() => ({
  stage: 'draw',
  planStage: 'draw',
  visitOpen: false,
  question: 'closes',
  dialog: null,
  jobFolded: false,
  sideFolded: false,
  numbersOpen: false,
  toDoOpen: false,
  tracingOpen: false,
  rowOpen: false,
  row: FIRST_ROW,
  savedPictures: { choice: 'ask', images: [] },
}));

/** Returns whether the plan is in view: no page covers it. */
export const isPlanInView = ({ stage, visitOpen }: Pick<UiState, 'stage' | 'visitOpen'>): boolean =>
  isPlanStage(stage) && !visitOpen;

/** Opens a stage. Text that is being typed into a field is committed first, as on leaving the field. */
export function openStage(stage: Stage): void {
  leaveField();
  usePanels.setState({ stage, visitOpen: false, ...(isPlanStage(stage) ? { planStage: stage } : {}) });
}

/** Shows the plan, at the last open stage beside it. */
export function showPlan(): void {
  const state = usePanels.getState();
  if (!isPlanInView(state)) openStage(state.planStage);
}

/** Opens the page of the two visits. */
export function openVisit(): void {
  leaveField();
  usePanels.setState({ visitOpen: true });
}

/** Removes the focus from a field, which a press on a button does not do in every browser. */
function leaveField(): void {
  const { activeElement } = document;
  if (activeElement instanceof HTMLElement && activeElement.matches('input, textarea, select')) activeElement.blur();
}
export const openQuestion = (question: QuestionId | null): void => usePanels.setState({ question });
export const showDialog = (dialog: Dialog | null): void => usePanels.setState({ dialog });

export type PageColumn = 'job' | 'side';

/** Media query of a small page: there is room for one column beside the sheet, and the other is folded to a strip. */
export const SMALL_PAGE = '(max-width: 1180px)';
/** Media query of a phone, or of a page zoomed to that size: a column covers the sheet or is a strip. */
const PHONE_PAGE = '(max-width: 640px), (max-height: 500px)';
export const isPhonePage = (): boolean => window.matchMedia(PHONE_PAGE).matches;
const isSmallPage = (): boolean => window.matchMedia(SMALL_PAGE).matches;

/** Folds a column to a strip. */
export function fold(column: PageColumn): void {
  usePanels.setState(column === 'job' ? { jobFolded: true } : { sideFolded: true });
}

/** Unfolds a column; on a small page, folds the other one. */
export function unfold(column: PageColumn): void {
  const folded = column === 'job' ? { jobFolded: false } : { sideFolded: false };
  const other = column === 'job' ? { sideFolded: true } : { jobFolded: true };
  usePanels.setState(isSmallPage() ? { ...folded, ...other } : folded);
}

/** Unfolds the first column of an opened plan; none on a phone, where it would cover the sheet. */
export function unfoldFirst(column: PageColumn): void {
  if (isPhonePage()) foldAll();
  else unfold(column);
}

/** Folds both columns, so that the sheet has the whole page. */
export function foldAll(): void {
  usePanels.setState({ jobFolded: true, sideFolded: true });
}

/**
 * Opens a stage by its button in the bar, with its column. On a phone, where a column covers the sheet, the first press on Draw or Place
 * shows the plan and the second its column.
 */
export function pressStage(stage: Stage): void {
  const before = usePanels.getState();
  const again = isPlanInView(before) && before.stage === stage;
  openStage(stage);
  if (!isPlanStage(stage)) return;
  if (!isPhonePage() || stage === 'site' || (again && before.jobFolded)) unfold('job');
  else foldAll();
}
