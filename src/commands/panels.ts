import { create } from 'zustand';
import type { ItemRow } from '../../geometry/edit/row.ts';
import type { Stage } from '../advice/guidance.ts';
import type { QuestionId } from '../advice/walk-round.ts';
import type { VisitDocument } from '../report/documents/draw-document.ts';
import type { PageChoice } from '../report/paper.ts';
import type { FileProblem } from '../storage/plan-files.ts';

/** Whether a saved file holds the pictures that were drawn over: asked once for the pictures that there are. */
export type PictureChoice = 'ask' | 'with' | 'without';

/** What covers the page until it is answered or closed. */
export type Dialog =
  | {
      readonly kind: 'refused';
      readonly name: string;
      readonly problems: readonly FileProblem[];
      readonly after?: 'plans';
    }
  | { readonly kind: 'plans' }
  /** The open plan is not stored, for the reason `why`; `go` opens the other plan all the same. */
  | { readonly kind: 'leave'; readonly why: string; readonly go: () => void }
  | { readonly kind: 'keys' }
  /** One room and one kit: the questions of the quick card, then the card. */
  | { readonly kind: 'quick-card' }
  | { readonly kind: 'quality' }
  /** Whether a saved file holds the pictures under the levels. */
  | { readonly kind: 'pictures'; readonly take: (choice: PictureChoice) => void }
  | { readonly kind: 'sheet'; readonly choice: PageChoice; readonly showTracing: boolean }
  /** One of the papers that go out with the job. */
  | { readonly kind: 'paper'; readonly choice: PageChoice; readonly which: VisitDocument };

/** The stages that are worked on beside the plan; each of the others has a page of its own. */
export const PLAN_STAGES = ['site', 'draw', 'place'] as const satisfies readonly Stage[];
type PlanStage = (typeof PLAN_STAGES)[number];

/** The stages that have a page of their own. */
export const PAGE_STAGES = ['time', 'house', 'log', 'read', 'sheet'] as const satisfies readonly Stage[];

/** Returns whether a value of any kind is the id of a stage. */
export const isStage = (value: unknown): value is Stage =>
  [...PLAN_STAGES, ...PAGE_STAGES].some((each) => each === value);

const isPlanStage = (stage: Stage): stage is PlanStage => PLAN_STAGES.some((each) => each === stage);

interface UiState {
  readonly stage: Stage;
  /** The stage that was last worked on beside the plan: the way back from a page leads there. */
  readonly planStage: PlanStage;
  /** Whether the page of the two visits covers the page of the stage. */
  readonly visitOpen: boolean;
  readonly question: QuestionId | null;
  readonly dialog: Dialog | null;
  /** Columns that are folded to a strip, to leave the sheet more room. */
  readonly jobFolded: boolean;
  readonly sideFolded: boolean;
  /** Whether the numbers of the selected detector show under its verdict. */
  readonly numbersOpen: boolean;
  /** Whether all that is still to do is listed over the stages. */
  readonly toDoOpen: boolean;
  /** Whether the work on the picture under the level is open. */
  readonly tracingOpen: boolean;
  /** Whether the fields of a row are open, and their values: those of the last row that was set out. */
  readonly rowOpen: boolean;
  readonly row: ItemRow;
  /** Whether a saved file holds the pictures that were drawn over. */
  readonly savedPictures: SavedPictures;
}

export interface SavedPictures {
  readonly choice: PictureChoice;
  /** The pictures that the answer was given for; with others it is asked again. */
  readonly images: readonly string[];
}

/** Registers every 6 ft: common practice, no published source. */
const FIRST_ROW: ItemRow = { more: 3, spacing: 1828.8, direction: 0 };

/** Which panels are open, and what their fields last held: never in the plan, never in the history. */
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

/** Opens a stage. What is typed into a field of the open one is committed first, as on leaving the field. */
export function openStage(stage: Stage): void {
  leaveField();
  usePanels.setState({ stage, visitOpen: false, ...(isPlanStage(stage) ? { planStage: stage } : {}) });
}

/** Comes back to the plan, at the stage that was last open beside it. */
export function showPlan(): void {
  const state = usePanels.getState();
  if (!isPlanInView(state)) openStage(state.planStage);
}

/** Opens the page of the two visits. */
export function openVisit(): void {
  leaveField();
  usePanels.setState({ visitOpen: true });
}

/** A press on a button does not take the focus from a field in every browser. */
function leaveField(): void {
  const { activeElement } = document;
  if (activeElement instanceof HTMLElement && activeElement.matches('input, textarea, select')) activeElement.blur();
}
export const openQuestion = (question: QuestionId | null): void => usePanels.setState({ question });
export const showDialog = (dialog: Dialog | null): void => usePanels.setState({ dialog });

export type PageColumn = 'job' | 'side';

/** On a small page the sheet has room for one column beside it: the other one is folded to a strip. */
export const SMALL_PAGE = '(max-width: 1180px)';
/** On a phone, or on a page enlarged to its size, a column covers the sheet or is a strip. */
const PHONE_PAGE = '(max-width: 640px), (max-height: 500px)';
export const isPhonePage = (): boolean => window.matchMedia(PHONE_PAGE).matches;
const isSmallPage = (): boolean => window.matchMedia(SMALL_PAGE).matches;

/** Folds a column to a strip. */
export function fold(column: PageColumn): void {
  usePanels.setState(column === 'job' ? { jobFolded: true } : { sideFolded: true });
}

/** Unfolds a column; on a small page it folds the other one. */
export function unfold(column: PageColumn): void {
  const folded = column === 'job' ? { jobFolded: false } : { sideFolded: false };
  const other = column === 'job' ? { sideFolded: true } : { jobFolded: true };
  usePanels.setState(isSmallPage() ? { ...folded, ...other } : folded);
}

/** The column that is open first with a plan: none on a phone, where it would cover the sheet. */
export function unfoldFirst(column: PageColumn): void {
  if (isPhonePage()) foldAll();
  else unfold(column);
}

/** Leaves the whole page to the sheet. */
export function foldAll(): void {
  usePanels.setState({ jobFolded: true, sideFolded: true });
}

/**
 * Opens a stage by its button in the bar, with its column. On a phone, where a column covers the sheet, Draw and Place show the plan first;
 * a second press shows their column.
 */
export function pressStage(stage: Stage): void {
  const before = usePanels.getState();
  const again = isPlanInView(before) && before.stage === stage;
  openStage(stage);
  if (!isPlanStage(stage)) return;
  if (!isPhonePage() || stage === 'site' || (again && before.jobFolded)) unfold('job');
  else foldAll();
}
