import type { Mm } from '../../../../geometry/plan/model.ts';
import { distance, nearestParameter } from '../../../../geometry/plane/point.ts';
import { cornerLines } from '../../../../geometry/snap/opening-fit.ts';
import { formatMeasured } from '../../../../geometry/units/index.ts';
import { splitWall } from '../../../state/edit-walls.ts';
import { selectModel } from '../../../state/selectors.ts';
import { SELECT_TOOL } from '../../../state/tool.ts';
import { clearSketch, useSketch } from '../../overlay/sketch.ts';
import { currentLevel, gridFor, store } from '../tool-context.ts';
import type { ToolController, ToolPoint } from '../tool-controller.ts';

/** Splits a wall at the next press; until then shows the lengths to its corners. */
export function createSplitWallTool(id: string): ToolController {
  const show = (point: ToolPoint): Mm | null => {
    const wall = currentLevel().walls.find((each) => each.id === id);
    if (!wall) return null;
    const lines = (offset: Mm) => cornerLines(selectModel(store()), wall, offset, 0, point.plan);
    const wanted = nearestParameter(point.plan, wall.from, wall.to) * distance(wall.from, wall.to);
    // Steps of the grid are counted from the corner, as a tape reads them.
    const step = gridFor(point);
    const reading = distance(...lines(wanted)[0]);
    const at = step ? wanted + Math.round(reading / step) * step - reading : wanted;
    const gaps = lines(at);
    const [near, far] = gaps.map((line) => formatMeasured(distance(...line), store().plan.display.length));
    useSketch.setState({ gaps, reading: [`${near} and ${far} to the corners`] });
    return at;
  };
  return {
    hover: show,
    down: show,
    drag: show,
    up: (point) => {
      const at = show(point);
      store().setTool(SELECT_TOOL);
      clearSketch();
      if (at !== null) splitWall(id, at);
    },
    cancel: () => {
      store().setTool(SELECT_TOOL);
      clearSketch();
      return true;
    },
  };
}
