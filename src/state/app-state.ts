/** The store by concern, types alone: the document, how it is viewed, and the session of work on it. */
import type { Beside, EditResult, Item, Look } from '../../geometry/edit/index.ts';
import type { ItemList } from '../../geometry/edit/listed-items.ts';
import type { Mm, Plan, XY } from '../../geometry/plan/model.ts';
import type { Line } from '../../geometry/plane/types.ts';
import type { HintAction } from '../advice/guidance/hint.ts';
import type { Remark } from '../advice/wall-remarks.ts';
import type { MenuAsk } from './menu.ts';
import type { Second } from './second-opinion.ts';
import type { Tool } from './tool.ts';
import type { SizePx, Viewport } from './viewport.ts';
import type { WallChain } from './wall-chain.ts';
import type { WallSettings } from './wall-settings.ts';

export type AppState = DocumentState &
  DocumentActions &
  LevelActions &
  ViewState &
  ViewActions &
  SessionState &
  SessionActions;

export type SetState = (change: Partial<AppState>) => void;
export type GetState = () => AppState;

/** The document: the only part that undo records. */
export interface DocumentState {
  readonly plan: Plan;
}

export interface DocumentActions {
  /**
   * Replaces the plan by the result of the edit, as one undo step; an edit that returns the same plan changes nothing. An edit whose result
   * no plan can hold is refused: the plan stays and the message says why. Shows remarks on side effects of the edit. Returns the reason of
   * a refusal; empty on success.
   */
  run(edit: (plan: Plan) => Plan | EditResult): string;
  /** Adds an item to the level with a new id and selects it. Returns the id; empty if it was refused. */
  addItem(list: ItemList, item: Omit<Item, 'id'>): string;
  /** Changes some fields of one item of the level. Returns the reason of a refusal; empty on success. */
  updateItem(id: string, patch: Readonly<Record<string, unknown>>): string;
  deleteSelection(): void;
  /** Adds walls to the level as one undo step, and shows a message if they close a room. Returns whether they do. */
  addWalls(lines: readonly Line[], thickness: Mm): boolean;
  /** Adds the walls of the chain to the level, placed as they were taped, and ends the chain. */
  endChain(): void;
  /** Moves the selected items, mm. Returns the reason of a refusal; empty on success. */
  nudge(dx: number, dy: number): string;
  /** Adds a detector at `at`, by default at the free spot nearest to the middle of the stage. Returns its id. */
  addDetector(at?: XY): string;
  /** Takes back the last corner of a wall chain that is being drawn, else the last step of history. */
  undo(): void;
  redo(): void;
  newPlan(): void;
  /** Opens another plan; its history begins here. */
  openPlan(plan: Plan): void;
}

export interface LevelActions {
  /** Adds an empty level directly above or below the one in view, named after its place, and shows it. */
  addLevel(where?: Beside): void;
  setLevel(levelId: string): void;
  /** Shows the next level up or down; shows a message if there is none. */
  stepLevel(where: Beside): void;
  /** Changes the order of the level in view, and says what that does to the choice of the level to test. */
  moveLevel(where: Beside): void;
  /** Sets the level in view at the height of another one: the halves of a split house. */
  putLevelWith(otherId: string): void;
  /** Deletes a level with everything on it, and shows a message of what was deleted. The only level is not deleted. */
  deleteLevel(levelId: string): void;
  /** Brings things of any level into view and selects them; `at`: the spot to show instead of their places. */
  showThings(levelId: string, ids: readonly string[], at?: XY | null): void;
}

type Theme = 'paper' | 'sun' | 'dark';

/** How the plan is viewed. Undo never touches any of it. */
export interface ViewState {
  /** The level in view. */
  readonly levelId: string;
  readonly viewport: Viewport;
  /** Whether the view was fitted to the whole level and not panned or zoomed since: a new stage size then fits it again. */
  readonly wholeInView: boolean;
  readonly stageSize: SizePx;
  /** Whether the level below shows faintly under the one in view. */
  readonly showBelow: boolean;
  /** Height of the underside of a detector, mm, that the zones are drawn for. */
  readonly sitHeight: Mm;
  readonly theme: Theme;
}

export interface ViewActions {
  setViewport(viewport: Viewport): void;
  /** Keeps the middle of the view in the middle, or the whole level in view. */
  setStageSize(size: SizePx): void;
  setShowBelow(on: boolean): void;
  setSitHeight(base: Mm): void;
  setTheme(theme: Theme): void;
  /** Brings the whole level into view. */
  fit(): void;
  /** Zooms about the middle of the stage. */
  zoomBy(factor: number): void;
}

/** A detector that is being dragged: where it is now. Not in the plan and not in the history until it is dropped. */
interface DraggedDetector {
  readonly id: string;
  readonly at: XY;
  /** Height of its underside there, mm: it is lifted onto what it is dragged over. */
  readonly base: Mm;
  /** Whether a finger drags it: it is then drawn above the finger, with its figures in a loupe. */
  readonly byTouch: boolean;
}

/** What the pointer (or the keyboard's cross) is over. */
export interface Hover {
  readonly at: XY;
  /** The item under it, if any. */
  readonly id: string | null;
}

/** The session of work: tool, selection, the gesture under way, messages. Undo never touches any of it. */
export interface SessionState {
  readonly tool: Tool;
  /** Whether the tool stays chosen after a press. */
  readonly keepTool: boolean;
  readonly selection: readonly string[];
  readonly hover: Hover | null;
  /** Whether points snap to ends, faces, right angles and the grid. */
  readonly snap: boolean;
  readonly draggedDetector: DraggedDetector | null;
  readonly chain: WallChain;
  readonly wallSettings: WallSettings;
  /** A point in the room whose use is being asked for; null for none. */
  readonly roomAsked: XY | null;
  /** The plan as it would be if the gesture under way ended now; null between gestures. */
  readonly previewPlan: Plan | null;
  /** The last refusal or remark, in plain words; empty for none. */
  readonly message: string;
  /** Side effects of the last edit; the action is offered as long as the message shows the remark. */
  readonly remark: Remark | null;
  /** The last result of the second computation of the verdicts, with its plan; null before the first. */
  readonly second: Second | null;
  /** What the menu of commands was opened for; null while it is closed. */
  readonly menu: MenuAsk | null;
  /** Whether the tracing image has handles on the sheet to be moved, turned and sized by. */
  readonly tracingFrameOpen: boolean;
  /** Whether single letters, digits and signs are shortcut keys wherever the focus is; else only while the sheet has it. */
  readonly letterKeysAnywhere: boolean;
  /** Ids of detectors that are placed in the house and may be moved on the plan all the same. */
  readonly unlocked: readonly string[];
  /** Who walks through the house and when: recorded with every answer that is given during the walk. */
  readonly walk: Look;
}

export interface SessionActions {
  setTool(tool: Tool): void;
  setKeepTool(keep: boolean): void;
  /** Selects these ids in place of what is selected; `toggle`: takes out those that are selected and adds the others. */
  select(ids: readonly string[], how?: 'replace' | 'toggle'): void;
  setHover(hover: Hover | null): void;
  setSnap(on: boolean): void;
  setDraggedDetector(draggedDetector: DraggedDetector | null): void;
  setChain(chain: WallChain): void;
  setWallSettings(wallSettings: WallSettings): void;
  askRoom(roomAsked: XY | null): void;
  setPreviewPlan(previewPlan: Plan | null): void;
  /** Shows a refusal or a remark, with an action for it; an empty text removes it. */
  say(message: string, action?: HintAction): void;
  unlock(ids: readonly string[]): void;
  lock(id: string): void;
  /** Stores the comparison; verdicts on which the two computations differ become unknown. */
  setSecond(second: Second): void;
  /** Updates everything that depends on direct sun, after more of it was computed. */
  sunChanged(): void;
  openMenu(ask: MenuAsk): void;
  closeMenu(): void;
  setTracingFrameOpen(open: boolean): void;
  setLetterKeysAnywhere(on: boolean): void;
  setWalk(change: Partial<Look>): void;
}
