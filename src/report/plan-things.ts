/** Fixtures and objects on paper, and the ground that they take. */
import type { Level, Shape } from '../../geometry/plan/model.ts';
import { shapeMiddle } from '../../geometry/plane/body.ts';
import { thingShapes } from '../drawing/things.ts';
import type { Slot } from './placer.ts';
import { svgShapes } from './svg-shapes.ts';
import { onPaper, toPaper, type View } from './view.ts';

export function drawThings(level: Level, view: View): string {
  return svgShapes(view, thingShapes(level, new Set()));
}

/** What nothing may be written over. */
export function thingSlot(view: View, shape: Shape): Slot {
  const [x, y] = toPaper(view, shapeMiddle(shape));
  if ('circle' in shape) {
    const across = onPaper(view, shape.circle.radius * 2);
    return { x, y, width: across, height: across, turn: 0 };
  }
  if ('box' in shape) {
    const { width, depth, turn } = shape.box;
    return { x, y, width: onPaper(view, width), height: onPaper(view, depth), turn };
  }
  const corners = shape.polygon.points.map((p) => toPaper(view, p));
  const [xs, ys] = [corners.map(([px]) => px), corners.map(([, py]) => py)];
  return { x, y, width: Math.max(...xs) - Math.min(...xs), height: Math.max(...ys) - Math.min(...ys), turn: 0 };
}
