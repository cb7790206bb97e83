import type { Level, Mm, Wall, XY } from '../../geometry/plan/model.ts';
import { emptyLevel, emptyPlan } from '../../geometry/planfile/empty.ts';
import { clearSketch, useSketch } from '../../src/editor/overlay/sketch.ts';
import type { ToolController, ToolPoint } from '../../src/editor/tools/tool-controller.ts';
import { useAppStore } from '../../src/state/store.ts';
import { toScreen } from '../../src/state/viewport.ts';

/** A stage without a browser: the real store, a viewport of 0.1 px per mm, and presses at points of the plan. */

export const state = useAppStore.getState;
export const sketch = useSketch.getState;
/** Returns the first level of the plan, without a preview. */
export const level = (): Level => state().plan.levels[0] ?? emptyLevel('none');
export const steps = (): number => useAppStore.temporal.getState().pastStates.length;

const wall = (id: string, from: XY, to: XY): Wall => ({ id, from, to, thickness: 200, side: 'auto' });
/** 8 by 6 m on the center-lines of its walls, clockwise on screen from the corner at (0, 0). */
const ROOM_WALLS: readonly Wall[] = [
  wall('w1', [0, 0], [8000, 0]),
  wall('w2', [8000, 0], [8000, 6000]),
  wall('w3', [8000, 6000], [0, 6000]),
  wall('w4', [0, 6000], [0, 0]),
];

/** Opens a metric plan of a room with a desk and a detector; no gesture is active. */
export function openRoom(part: Partial<Level> = {}): void {
  const room: Level = {
    ...emptyLevel('L1'),
    walls: ROOM_WALLS,
    objects: [
      {
        id: 'o1',
        name: 'Desk',
        shape: { box: { center: [2000, 2000], width: 1200, depth: 600, turn: 0 } },
        bottom: 0,
        top: 760,
      },
    ],
    detectors: [{ id: 'd1', label: 'A1', at: [4000, 3000], base: 762, radius: 50.8, tall: 25.4, pair: null }],
    ...part,
  };
  const plan = emptyPlan();
  state().openPlan({ ...plan, display: { ...plan.display, length: 'metric' }, levels: [room] });
  state().setStageSize({ width: 1000, height: 800 });
  state().setViewport({ scale: 0.1, x: 0, y: 0 });
  useSketch.setState({ pointer: null, touch: false, cross: null, typed: null, cursor: 'default' });
  clearSketch();
}

/** Returns a pointer on the plan; without snap unless `free` says otherwise. */
export function at(x: Mm, y: Mm, part: Partial<ToolPoint> = {}): ToolPoint {
  const plan: XY = [x, y];
  const { viewport } = state();
  return {
    plan,
    screen: toScreen(viewport, plan),
    shift: false,
    free: true,
    touch: false,
    reach: 9 / viewport.scale,
    ...part,
  };
}

export function press(tool: ToolController, point: ToolPoint): void {
  tool.hover(point);
  tool.down(point);
  tool.up(point);
}

/** Presses at the first point and drags to the others, without a release. */
export function pull(tool: ToolController, from: ToolPoint, ...on: readonly ToolPoint[]): void {
  tool.down(from);
  for (const point of on) tool.drag(point);
}

/** Returns a `keydown` event; of it the tools read only `key` and the modifiers. */
export function key(name: string): KeyboardEvent {
  return { key: name, ctrlKey: false, metaKey: false, altKey: false, shiftKey: false, target: null } as KeyboardEvent;
}
