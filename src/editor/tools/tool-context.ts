import type { LevelModel } from '../../../geometry/level/types.ts';
import type { Level, Mm, XY } from '../../../geometry/plan/model.ts';
import { memoize } from '../../../geometry/plane/memoize.ts';
import { type SnapTargets, snapTargets } from '../../../geometry/snap/snap-point.ts';
import { selectBelow, selectLevel, selectModel } from '../../state/selectors.ts';
import { useAppStore } from '../../state/store.ts';
import { SELECT_TOOL } from '../../state/tool.ts';
import { toScreen } from '../../state/viewport.ts';
import type { ToolPoint } from './tool-controller.ts';

export const store = useAppStore.getState;

/** Whether the tool stays chosen after this press. */
export function keepsTool(point: ToolPoint): boolean {
  return point.shift || store().keepTool;
}

/** Reach of a press that no pointer makes, px. */
export const CURSOR_REACH_PX = 12;

/** Returns a press at a point of the plan that no pointer makes, but the keyboard's cross or a menu row. */
export function pressAt(plan: XY, shift = false): ToolPoint {
  const { viewport, snap } = store();
  const screen = toScreen(viewport, plan);
  return { plan, screen, shift, free: !snap, touch: false, reach: CURSOR_REACH_PX / viewport.scale };
}

/** Returns to the select tool and keeps the message. */
export function returnToSelect(): void {
  const { message } = store();
  store().setTool(SELECT_TOOL);
  // `setTool` clears the message, but that of the last press is still needed.
  store().say(message);
}

/** Steps of the grid and of the arrow keys, mm: the grid 1 in, keys 1 in, 1/8 in and 1 ft; or the grid 5 cm, keys 1 cm, 1 mm and 10 cm. */
export const STEPS = {
  'feet-inches': { grid: 25.4, key: 25.4, fine: 3.175, coarse: 304.8 },
  metric: { grid: 50, key: 10, fine: 1, coarse: 100 },
} as const;

export function steps(): (typeof STEPS)[keyof typeof STEPS] {
  return STEPS[store().plan.display.length];
}

export function gridFor(point: ToolPoint): Mm | null {
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

/** Wall ends and floor corners of the level below, since walls are mostly above walls. */
const endsBelow = memoize((below: LevelModel): readonly XY[] => [
  ...snapTargets(below.level, null).ends,
  ...below.rooms.flatMap(({ floorRings }) => floorRings.flat()),
]);
