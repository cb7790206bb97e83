import { rectangleWalls } from '../../../geometry/edit/draw-walls.ts';
import { TAPED_BY_WORDS } from '../../../geometry/messages/taped-by.ts';
import type { Mm, XY } from '../../../geometry/plan/model.ts';
import { snapPoint } from '../../../geometry/snap/snap-point.ts';
import { formatMeasured, formatRequired } from '../../../geometry/units/index.ts';
import { askForRoom } from '../lengths/set-out.ts';
import { clearSketch, useSketch } from '../overlay/sketch.ts';
import { currentLevel, gridFor, keepsTool, returnToSelect, store, targets } from './tool-context.ts';
import type { ToolController, ToolPoint } from './tool-controller.ts';

/** A room narrower than one foot counts as a mistaken drag, mm. */
const LEAST_ROOM: Mm = 304.8;

/** Draws a rectangular room from corner to corner, as it is taped, by one drag or by two presses. */
export function createRoomBoxTool(): ToolController {
  let from: XY | null = null;
  let pressedAt: XY | null = null;

  const show = (to: XY) => {
    useSketch.setState({ box: from ? [from, to] : null, reading: from ? reading(from, to) : [], guides: [] });
  };
  const finish = (to: XY, again: boolean) => {
    const start = from;
    from = null;
    clearSketch();
    if (!start) return;
    if (Math.min(Math.abs(to[0] - start[0]), Math.abs(to[1] - start[1])) < LEAST_ROOM) {
      const least = formatRequired(LEAST_ROOM, store().plan.display.length);
      store().say(
        `${reading(start, to)} is too small for a room: ${least} each way at the least. Drag from one inside corner to the opposite one.`,
      );
      return;
    }
    const { by } = store().wallSettings;
    store().addWalls(rectangleWalls(currentLevel(), start, to, thicknessNow(), by), thicknessNow());
    askForRoom([Math.min(start[0], to[0]) + LEAST_ROOM / 2, Math.min(start[1], to[1]) + LEAST_ROOM / 2]);
    if (!again) returnToSelect();
  };

  return {
    hover: (point) => show(corner(point)),
    down: (point) => {
      // A new attempt removes the message of the last one.
      if (store().message) store().say('');
      pressedAt = point.screen;
      from ??= corner(point);
      show(corner(point));
    },
    drag: (point) => show(corner(point)),
    up: (point) => {
      const pulled = pressedAt && Math.hypot(point.screen[0] - pressedAt[0], point.screen[1] - pressedAt[1]) > 8;
      const to = corner(point);
      // A press without a pull is the first corner; the second press is the other.
      if (pulled || (from && (from[0] !== to[0] || from[1] !== to[1]))) finish(to, keepsTool(point));
    },
    cancel: () => {
      const busy = from !== null;
      from = null;
      clearSketch();
      return busy;
    },
  };
}

function corner(point: ToolPoint): XY {
  if (point.free) return point.plan;
  const { faces, ends } = targets();
  // Corners of existing rooms, to draw one room beside another.
  const corners = faces.map(([, end]) => end);
  const options = { reach: point.reach, grid: gridFor(point), from: null, directions: [] };
  return snapPoint(point.plan, { ends: [...corners, ...ends], centerLines: [], faces }, options).at;
}

function thicknessNow(): Mm {
  const { outer, partition } = store().wallSettings;
  return currentLevel().walls.length > 0 ? partition : outer;
}

function reading(from: XY, to: XY): readonly string[] {
  const unit = store().plan.display.length;
  const [width, depth] = [Math.abs(to[0] - from[0]), Math.abs(to[1] - from[1])];
  const how = TAPED_BY_WORDS[store().wallSettings.by];
  return [`${formatMeasured(width, unit)} × ${formatMeasured(depth, unit)} ${how}`];
}
