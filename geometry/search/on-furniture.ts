import type { LevelModel } from '../level/types.ts';
import type { Plan } from '../plan/model.ts';
import type { Probe } from '../region/types.ts';
import { type Ground, objectGrounds } from './ground.ts';

/** A place that stands on a piece of furniture. */
interface Carried {
  readonly on: string | null;
}

/**
 * The places on furniture that a search finds: off the edge of each thing; at the edge only of those that have no place off it.
 *
 * @param seek the search: the places on some grounds that may stand beside those taken, the best first
 */
export function seekOnFurniture<Place extends Carried>(
  plan: Plan,
  model: LevelModel,
  probe: Probe,
  count: number,
  seek: (grounds: readonly Ground[], taken: readonly Place[]) => Place[],
): Place[] {
  const inner = objectGrounds(plan, model, probe, 'off-edge');
  const found = seek(inner, []);
  if (found.length >= count) return found;
  const hasInner = (id: string | null) => seek(innerOf(inner, id), []).length > 0;
  const known = new Map(found.map(({ on }) => [on, true]));
  let edges = objectGrounds(plan, model, probe, 'on-it').filter(({ on }) => !known.get(on?.id ?? null));
  for (;;) {
    const places = seek(edges, found);
    for (const { on } of places) if (!known.has(on)) known.set(on, hasInner(on));
    if (places.every(({ on }) => !known.get(on))) return [...found, ...places];
    edges = edges.filter(({ on }) => !known.get(on?.id ?? null));
  }
}

function innerOf(grounds: readonly Ground[], id: string | null): Ground[] {
  return grounds.filter(({ on }) => on?.id === id);
}
