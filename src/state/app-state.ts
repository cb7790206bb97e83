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
   * One undo step: replaces the plan by the result of the edit; the same plan back means that nothing happened. An edit that no plan
   * could hold is refused: the plan stays and the message says why. Shows remarks on what the edit brought about beside what was asked
   * for. Returns the reason of a refusal; empty when it was done.
   */
  run(edit: (plan: Plan) => Plan | EditResult): string;
  /** Puts an item on the level under a fresh id and selects it. Returns the id; empty where it was refused. */
  addItem(list: ItemList, item: Omit<Item, 'id'>): string;
  /** Changes some fields of one item of the level. Returns why not; empty when it was done. */
  updateItem(id: string, patch: Readonly<Record<string, unknown>>): string;
  deleteSelection(): void;
  /** Puts walls on the level as one step, and says so when a room closed with them. Returns whether one did. */
  addWalls(lines: readonly Line[], thickness: Mm): boolean;
  /** Puts the walls of the chain on the level, on its line, and begins no other. */
  endChain(): void;
  /** Moves what is selected, mm. Returns why not, or empty. */
  nudge(dx: number, dy: number): string;
  /** Adds a detector at `at`, by default at the free spot nearest to the middle of the stage. Returns its id. */
  addDetector(at?: XY): string;
  /** Takes back the last corner of a wall chain under way, else the last step of history. */
  undo(): void;
  redo(): void;
  newPlan(): void;
  /** Opens another plan; its history begins here. */
  openPlan(plan: Plan): void;
}

export interface LevelActions {
  /** A bare level right above or below the one in view, named after its place. It comes into view. */
  addLevel(where?: Beside): void;
  setLevel(levelId: string): void;
  /** The next level up or down; says so where there is none. */
  stepLevel(where: Beside): void;
  /** Changes the order of the level in view, and says what that does to the choice of the level to test. */
  moveLevel(where: Beside): void;
  /** Sets the level in view at the height of another one: the halves of a split house. */
  putLevelWith(otherId: string): void;
  /** A level with all that is on it; the last one stays. Says what went. */
  deleteLevel(levelId: string): void;
  /** Brings things of any level into view and selects them; `at`: the spot to look at in place of where they are. */
  showThings(levelId: string, ids: readonly string[], at?: XY | null): void;
}

type Theme = 'paper' | 'sun' | 'dark';

/** How the plan is viewed. Undo never touches any of it. */
export interface ViewState {
  /** The level in view. */
  readonly levelId: string;
  readonly viewport: Viewport;
  /** Whether the whole level is in view and nobody has panned or zoomed since: then a new stage size keeps it so. */
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
  /** The middle of the plan stays in the middle, or the whole level in view. */
  setStageSize(size: SizePx): void;
  setShowBelow(on: boolean): void;
  setSitHeight(base: Mm): void;
  setTheme(theme: Theme): void;
  /** Brings the whole level into view. */
  fit(): void;
  /** About the middle of the stage. */
  zoomBy(factor: number): void;
}

/** A detector that is being dragged: where it is now. Not in the plan and not in the history until it is dropped. */
interface DraggedDetector {
  readonly id: string;
  readonly at: XY;
  /** Height of its underside there, mm: it is lifted onto what it is dragged over. */
  readonly base: Mm;
  /** Dragged by a finger: it then stands above the finger, with its figures in a loupe. */
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
  /** A point of the room that it is asked what it is used for; null for none. */
  readonly roomAsked: XY | null;
  /** The plan as it would be if the gesture under way ended now; null between gestures. */
  readonly previewPlan: Plan | null;
  /** The last refusal or remark, in plain words; empty for none. */
  readonly message: string;
  /** What the last edit brought about; its action is offered for as long as the message says it. */
  readonly remark: Remark | null;
  /** The last result of the second computation of the verdicts, and of which plan; null before the first. */
  readonly second: Second | null;
  /** What the open menu of commands was asked for; null while it is closed. */
  readonly menu: MenuAsk | null;
  /** Whether the tracing image has handles on the sheet to be moved, turned and sized by. */
  readonly tracingFrameOpen: boolean;
  /** Whether letters, digits and signs alone are keys wherever the keyboard is; else only while the sheet has it. */
  readonly letterKeysAnywhere: boolean;
  /** Ids of detectors that are placed in the house and may be moved on the plan all the same. */
  readonly unlocked: readonly string[];
  /** Who walks through the house and when: recorded with every answer that is given meanwhile. */
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
  /** Shows a refusal or a remark, with what can be done about it; an empty text takes it away. */
  say(message: string, action?: HintAction): void;
  unlock(ids: readonly string[]): void;
  lock(id: string): void;
  /** From now on the verdicts that the two computations differ on are unknown. */
  setSecond(second: Second): void;
  /** Shows everything again that depends on direct sun: more of it is worked out. */
  sunChanged(): void;
  openMenu(ask: MenuAsk): void;
  closeMenu(): void;
  setTracingFrameOpen(open: boolean): void;
  setLetterKeysAnywhere(on: boolean): void;
  setWalk(change: Partial<Look>): void;
}
