import type { Mm, XY } from '../../../geometry/plan/model.ts';

/** Where a pointer is: mouse, finger, pen or the keyboard's cross. */
export interface ToolPoint {
  readonly plan: XY;
  readonly screen: XY;
  /** Shift: add to the selection, or keep the tool. */
  readonly shift: boolean;
  /** Snap is off, by the switch or by Alt. */
  readonly free: boolean;
  readonly touch: boolean;
  /** How near counts as on it, mm: wider for a finger than for a mouse. */
  readonly reach: Mm;
}

/** What a tool does with a pointer and with keys. */
export interface ToolController {
  /** The pointer moves with nothing pressed. */
  hover(point: ToolPoint): void;
  down(point: ToolPoint): void;
  /** The pointer moves while pressed. */
  drag(point: ToolPoint): void;
  up(point: ToolPoint): void;
  /** Gives up the whole gesture under way. Returns false when there was none. */
  cancel(): boolean;
  /** A key that only this tool uses. Returns false when it does not use it. */
  key?(event: KeyboardEvent): boolean;
  /** An arrow key that `key` used was let go. */
  keyUp?(): void;
  /** A finger or pen has rested on one spot: a long press. */
  hold?(point: ToolPoint): void;
  /** A second finger came down, so the press counts for nothing. Without this method `cancel` is called. */
  interrupt?(): void;
  /** The pointer has left the sheet: what was previewed at it goes. */
  out?(): void;
  /** Another tool is chosen: what is drawn so far is kept where it can be. */
  leave?(): void;
  /** A length is being typed: shows what it would make. */
  typing?(): void;
  /** A typed length takes effect. Returns why not, in words; empty when it did. */
  typedLength?(text: string): string;
}
