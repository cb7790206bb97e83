import type { LevelModel } from '../../../geometry/level/types.ts';
import type { Level, Mm, XY } from '../../../geometry/plan/model.ts';
import { memoize } from '../../../geometry/plane/memoize.ts';
import { type SnapTargets, snapTargets } from '../../../geometry/snap/snap.ts';
import { selectBelow, selectLevel, selectModel } from '../../state/selectors.ts';
import { useAppStore } from '../../state/store.ts';
import { SELECT_TOOL } from '../../state/tool.ts';
import { toScreen } from '../../state/viewport.ts';

/** Where a pointer (mouse, finger, pen or the keyboard's cross) is. */
export interface Point {
  readonly plan: XY;
  readonly screen: XY;
  /** Shift: add to the selection, or keep the tool in hand. */
  readonly shift: boolean;
  /** Snap is held off, by the switch or by Alt. */
  readonly free: boolean;
  readonly touch: boolean;
  /** How near counts as on it, mm: a finger's breadth or a mouse's. */
  readonly reach: Mm;
}

/** What a tool does with a pointer. A tool that has something under way gives it up whole on `cancel`. */
export interface Hand {
  /** The pointer moves with nothing pressed. */
  hover(point: Point): void;
  down(point: Point): void;
  /** The pointer moves while pressed. */
  drag(point: Point): void;
  up(point: Point): void;
  /** Gives up what is under way; false when nothing was. */
  cancel(): boolean;
  /** A key that only this tool knows; false when it does not. */
  key?(event: KeyboardEvent): boolean;
  /** A finger or pen has rested on one spot for a while. */
  hold?(point: Point): void;
  /** A second finger came down: the press counts for nothing. Without it, `cancel` is called. */
  interrupt?(): void;
  /** The tool is put back: what is drawn so far is kept where it can be. */
  leave?(): void;
  /** A length is being typed: shows what it would make. */
  typing?(): void;
  /** A length that was typed: takes effect, or answers why not, in words. */
  typedLength?(text: string): string;
}

export const store = useAppStore.getState;

/** Whether what is in hand stays there after this press. */
export function staysInHand(point: Point): boolean {
  return point.shift || store().keepTool;
}

/** What is as near as this to a press without a pointer counts as under it, px. */
export const CROSS_REACH_PX = 12;

/** A press at a spot of the plan that no pointer makes: the keyboard's cross, an act in a list. */
export function pressAt(plan: XY, shift = false): Point {
  const { viewport, snap } = store();
  const screen = toScreen(viewport, plan);
  return { plan, screen, shift, free: !snap, touch: false, reach: CROSS_REACH_PX / viewport.scale };
}

/** Nothing in hand any more. */
export function putBack(): void {
  const { message } = store();
  store().setTool(SELECT_TOOL);
  // What was said about the last press still holds.
  store().say(message);
}

/** Steps that lengths are drawn in, and that keys move by: an inch, an eighth and a foot; or 1 cm, 1 mm and 10 cm. */
export const STEPS = {
  'feet-inches': { grid: 25.4, key: 25.4, fine: 3.175, coarse: 304.8 },
  metric: { grid: 50, key: 10, fine: 1, coarse: 100 },
} as const;

export function steps(): (typeof STEPS)[keyof typeof STEPS] {
  return STEPS[store().plan.display.length];
}

export function gridFor(point: Point): Mm | null {
  return point.free ? null : steps().grid;
}

export function currentLevel(): Level {
  return selectLevel(store());
}

export function targets(except?: ReadonlySet<string>): SnapTargets {
  const own = snapTargets(currentLevel(), selectModel(store()), except);
  const below = selectBelow(store());
  return below ? { ...own, ends: [...own.ends, ...endsBelow(below)] } : own;
}

/** Ends of the walls below and the corners of its floors: what is drawn over them stands where they do. */
const endsBelow = memoize((below: LevelModel): readonly XY[] => [
  ...snapTargets(below.level, null).ends,
  ...below.rooms.flatMap(({ floorRings }) => floorRings.flat()),
]);
