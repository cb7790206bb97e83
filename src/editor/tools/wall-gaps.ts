import { footprintReach } from '../../../geometry/dimension/footprint.ts';
import { gapLines } from '../../../geometry/dimension/wall-gaps.ts';
import type { Level, Shape } from '../../../geometry/plan/model.ts';
import { shapeMiddle } from '../../../geometry/plane/body.ts';
import type { Line } from '../../../geometry/plane/types.ts';
import { selectModel } from '../../state/selectors.ts';
import { store } from './tool-context.ts';

/** Returns the lines from a footprint to the nearer wall on each axis, as they would be taped. */
export function gapsOfShape(shape: Shape): readonly Line[] {
  return gapLines(selectModel(store()), shapeMiddle(shape), footprintReach(shape));
}

/** Returns the same for an item that is being moved; none for several items, or for an item without a footprint. */
export function gapsOfItem({ fixtures, objects }: Level, ids: readonly string[]): readonly Line[] {
  const [id] = ids;
  const thing = ids.length === 1 ? [...fixtures, ...objects].find((each) => each.id === id) : undefined;
  return thing ? gapsOfShape(thing.shape) : [];
}
