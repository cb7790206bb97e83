import { footprintReach } from '../../../geometry/dimension/footprint.ts';
import { gapLines } from '../../../geometry/dimension/wall-gaps.ts';
import type { Level, Shape } from '../../../geometry/plan/model.ts';
import { shapeMiddle } from '../../../geometry/plane/body.ts';
import type { Line } from '../../../geometry/plane/types.ts';
import { selectModel } from '../../state/selectors.ts';
import { store } from './hand.ts';

/** Where a footprint stands, as one tapes it: to the nearer wall on either axis. */
export function tapedShape(shape: Shape): readonly Line[] {
  return gapLines(selectModel(store()), shapeMiddle(shape), footprintReach(shape));
}

/** The same of one thing of a level that is being moved; nothing for several, and for what has no footprint. */
export function tapedThing({ fixtures, objects }: Level, ids: readonly string[]): readonly Line[] {
  const [id] = ids;
  const thing = ids.length === 1 ? [...fixtures, ...objects].find((each) => each.id === id) : undefined;
  return thing ? tapedShape(thing.shape) : [];
}
