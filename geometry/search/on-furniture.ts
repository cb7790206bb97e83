import type { LevelModel } from '../level/types.ts';
import type { Plan } from '../plan/model.ts';
import type { Probe } from '../region/types.ts';
import { type Ground, objectGrounds } from './ground.ts';

/** A place on an object. */
interface OnObject {
  readonly on: string | null;
}

/**
 * Returns the places on furniture that a search finds: away from the edge of each object; at the edge only of objects
 * without such a place.
 *
 * @param search returns the places on some grounds that are far enough from those taken, best first
 */
export function searchOnFurniture<Place extends OnObject>(
  plan: Plan,
  model: LevelModel,
  probe: Probe,
  count: number,
  search: (grounds: readonly Ground[], taken: readonly Place[]) => Place[],
): Place[] {
  const inner = objectGrounds(plan, model, probe, 'off-edge');
  const found = search(inner, []);
  if (found.length >= count) return found;
  const hasInner = (id: string | null) => search(innerOf(inner, id), []).length > 0;
  const hasInnerPlace = new Map(found.map(({ on }) => [on, true]));
  let edges = objectGrounds(plan, model, probe, 'on-it').filter(({ on }) => !hasInnerPlace.get(on?.id ?? null));
  for (;;) {
    const places = search(edges, found);
    for (const { on } of places) if (!hasInnerPlace.has(on)) hasInnerPlace.set(on, hasInner(on));
    if (places.every(({ on }) => !hasInnerPlace.get(on))) return [...found, ...places];
    edges = edges.filter(({ on }) => !hasInnerPlace.get(on?.id ?? null));
  }
}

function innerOf(grounds: readonly Ground[], id: string | null): Ground[] {
  return grounds.filter(({ on }) => on?.id === id);
}
