import { USUAL_DETECTOR } from '../../geometry/plan/items.ts';
import type { Mm, Plan, XY } from '../../geometry/plan/model.ts';
import type { HintAct } from '../advice/guidance/hint.ts';
import { type Chain, NO_CHAIN } from './chain.ts';
import type { Second } from './second.ts';
import { SELECT_TOOL, type Tool } from './tool.ts';
import type { SizePx, Viewport } from './viewport.ts';

/** What an edit has brought about beside what was asked for: the words, and what sets it right with one press. */
export interface Remark {
  readonly words: string;
  readonly act: HintAct | null;
}

type Theme = 'paper' | 'sun' | 'dark';

/** A detector that is being carried: where it is now. Not in the plan and not in the history until it is set down. */
interface LiveDetector {
  readonly id: string;
  readonly at: XY;
  /** Height of its underside there: it is lifted onto what it is carried over. */
  readonly base: Mm;
  /** Carried by a finger: it then stands above the finger, with its figures in a loupe. */
  readonly byTouch: boolean;
}

/** What the pointer (or the keyboard's cross) is over. */
interface Hover {
  readonly at: XY;
  /** The item under it, if any. */
  readonly id: string | null;
}

/** How the plan is looked at. Undo never touches any of it. */
export interface ViewState {
  readonly levelId: string;
  readonly tool: Tool;
  /** Whether the thing in hand stays there after a press, until it is put back. */
  readonly keepTool: boolean;
  readonly selection: readonly string[];
  readonly hover: Hover | null;
  readonly viewport: Viewport;
  /** Whether the whole level was brought into view and nobody has moved the sheet since: then it stays so. */
  readonly wholeInView: boolean;
  readonly stageSize: SizePx;
  /** Whether points are drawn to ends, faces, right angles and the grid. */
  readonly snap: boolean;
  /** The last refusal or remark, in plain words; empty for none. */
  readonly message: string;
  /** What the last edit brought about; its press is offered for as long as the message says it. */
  readonly remark: Remark | null;
  readonly live: LiveDetector | null;
  readonly chain: Chain;
  /** The plan as it would be if the gesture under way ended now; null between gestures. */
  readonly draft: Plan | null;
  /** Height of a detector's underside that the sheet is shaded for. */
  readonly sitHeight: Mm;
  readonly theme: Theme;
  /** Whether the level below shows faintly under the one in view. */
  readonly showBelow: boolean;
  /** What the second computation of the verdicts said last, and of which plan; null before it has. */
  readonly second: Second | null;
}

export interface ViewActions {
  setTool(tool: Tool): void;
  setKeepTool(keep: boolean): void;
  /** Selects these ids in place of, or (`add`) in turn with, what is selected. */
  select(ids: readonly string[], how?: 'replace' | 'toggle'): void;
  setHover(hover: Hover | null): void;
  setViewport(viewport: Viewport): void;
  /** The sheet keeps its middle, or the whole level in view. */
  setStageSize(size: SizePx): void;
  setSnap(on: boolean): void;
  /** Shows a refusal or a remark; an empty text takes it away. */
  say(message: string): void;
  setLive(live: LiveDetector | null): void;
  setChain(chain: Chain): void;
  setDraft(draft: Plan | null): void;
  setSitHeight(base: Mm): void;
  setTheme(theme: Theme): void;
  /** From now on the verdicts that the two computations differ on are unknown. */
  setSecond(second: Second): void;
  /** The whole level in view. */
  fit(): void;
  /** About the middle of the stage. */
  zoomBy(factor: number): void;
}

export const INITIAL_VIEW: ViewState = {
  levelId: '',
  tool: SELECT_TOOL,
  keepTool: false,
  selection: [],
  hover: null,
  viewport: { scale: 0.08, x: 80, y: 80 },
  wholeInView: true,
  stageSize: { width: 0, height: 0 },
  snap: true,
  message: '',
  remark: null,
  live: null,
  chain: NO_CHAIN,
  draft: null,
  sitHeight: USUAL_DETECTOR.base,
  theme: 'paper',
  showBelow: true,
  second: null,
};
