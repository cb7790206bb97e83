import type { Mm, XY } from '../../../geometry/plan/model.ts';

/** Where a pointer is: mouse, finger, pen or the keyboard's cross. */
export interface ToolPoint {
  readonly plan: XY;
  readonly screen: XY;
  /** Shift: add to the selection, or keep the tool. */
  readonly shift: boolean;
  /** Whether snap is off, by the switch or by Alt. */
  readonly free: boolean;
  readonly touch: boolean;
  /** A thing within this distance counts as pressed, mm: more for a finger than for a mouse. */
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
  /** Cancels the whole gesture under way. Returns false if there was none. */
  cancel(): boolean;
  /** Handles a key that only this tool uses. Returns false if the tool does not use it. */
  key?(event: KeyboardEvent): boolean;
  /** An arrow key that `key` handled was released. */
  keyUp?(): void;
  /** A finger or pen has rested on one spot: a long press. */
  hold?(point: ToolPoint): void;
  /** A second finger came down, so the press has no effect. Without this method `cancel` is called. */
  interrupt?(): void;
  /** The pointer has left the sheet: removes the preview at it. */
  out?(): void;
  /** Another tool is chosen: keeps what is drawn so far, if possible. */
  leave?(): void;
  /** A length is being typed: previews its result. */
  typing?(): void;
  /** Applies a typed length. Returns the reason of a refusal, in words; empty on success. */
  typedLength?(text: string): string;
}
