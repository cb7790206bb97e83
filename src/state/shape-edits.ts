import { type FootprintSize, withFootprintSize } from '../../geometry/dimension/footprint.ts';
import { sizedFromWalls } from '../../geometry/dimension/sized-from-walls.ts';
import { sizeRefusal } from '../../geometry/messages/index.ts';
import type { Deg, Mm, Shape } from '../../geometry/plan/model.ts';
import { refuseLocked } from './locked-detectors.ts';
import { selectModel } from './selectors.ts';
import { useAppStore } from './store.ts';

/** Sizes and angles that are typed for a fixture or an object. Each returns the reason of a refusal, in words; empty on success. */

interface Thing {
  readonly id: string;
  readonly shape: Shape;
}

/** Taped distances stay: the thing grows away from its nearest walls. */
export function resizeThing({ id, shape }: Thing, part: Exclude<keyof FootprintSize, 'turn'>, mm: Mm): string {
  const state = useAppStore.getState();
  return sizeRefusal(mm) || state.updateItem(id, { shape: sizedFromWalls(selectModel(state), shape, { [part]: mm }) });
}

/** What stands on the thing turns with it, so a locked detector there refuses. */
export function turnThing({ id, shape }: Thing, turn: Deg): string {
  const state = useAppStore.getState();
  return refuseLocked(state, [id]) || state.updateItem(id, { shape: withFootprintSize(shape, { turn }) });
}
