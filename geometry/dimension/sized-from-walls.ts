import type { LevelModel } from '../level/types.ts';
import type { Shape, XY } from '../plan/model.ts';
import { shapeMiddle } from '../plane/body.ts';
import { translateShape } from '../plane/rigid-motion.ts';
import { type FootprintSize, footprintReach, withFootprintSize } from './footprint.ts';
import { moveToGap, nearGaps } from './wall-gaps.ts';

/** Returns a shape resized away from its nearest walls: its distances to them, which were taped, stay. Otherwise as `withFootprintSize`. */
export function sizedFromWalls(
  model: LevelModel,
  shape: Shape,
  size: Partial<Record<Exclude<keyof FootprintSize, 'turn'>, number>>,
): Shape {
  const sized = withFootprintSize(shape, size);
  const [before, after] = [footprintReach(shape), footprintReach(sized)];
  const by = nearGaps(model, shapeMiddle(shape), before)
    .map(({ side }) => moveToGap(side, before[side] - after[side], 0))
    .reduce<XY>(([x, y], [dx, dy]) => [x + dx, y + dy], [0, 0]);
  return translateShape(sized, by);
}
