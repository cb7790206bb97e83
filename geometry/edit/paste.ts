import { levelExtent } from '../level/level-extent.ts';
import { ITEM_KINDS, type Item, type ItemKind, itemsOf } from '../plan/kinds.ts';
import type { Level, Mm, Plan, XY } from '../plan/model.ts';
import { shapeMiddle } from '../plane/body.ts';
import { distance, roundCoordinate } from '../plane/point.ts';
import { type Copies, copiedInto } from './duplicate.ts';
import { levelOf } from './level.ts';

/** Nearer than this, two things stand on the same spot, mm: what rounding to 1/64 in leaves. */
const SAME_SPOT: Mm = 0.5;

/**
 * The level with the things of these ids alone, for taking elsewhere. A wall brings its openings; an opening whose wall is not
 * among the ids stays behind, since it cannot stand without one.
 */
export function clipOf(level: Level, ids: readonly string[]): Level {
  const chosen = new Set(ids);
  const taken = <T extends { readonly id: string }>(items: readonly T[]) => items.filter(({ id }) => chosen.has(id));
  return {
    ...level,
    walls: taken(level.walls),
    openings: level.openings.filter(({ wall }) => chosen.has(wall)),
    rooms: taken(level.rooms),
    fixtures: taken(level.fixtures),
    objects: taken(level.objects),
    detectors: taken(level.detectors),
  };
}

/** Everything of a clip put on a level, moved by `by`, mm; fresh ids, else as for `copiedInto`. */
export function pastedItems(plan: Plan, levelId: string, clip: Level, by: XY): Copies {
  const ids = ITEM_KINDS.flatMap((kind) => itemsOf<ItemKind>(clip, kind).map(({ id }) => id));
  return copiedInto(plan, levelId, clip, ids, by);
}

/**
 * How far to move a clip, mm. With `at` its middle comes there. Else it keeps its place; where a thing of the same kind stands on
 * that very spot it goes `step` to the right and down, again and again until none does. [0, 0] for a clip of nothing.
 */
export function pasteOffset(plan: Plan, levelId: string, clip: Level, at: XY | null, step: Mm): XY {
  const extent = levelExtent(clip);
  if (!extent) return [0, 0];
  if (at)
    return [
      roundCoordinate(at[0] - (extent.minX + extent.maxX) / 2),
      roundCoordinate(at[1] - (extent.minY + extent.maxY) / 2),
    ];
  const level = levelOf(plan, levelId);
  let by: Mm = 0;
  while (coversAny(level, clip, by)) by += step;
  return [roundCoordinate(by), roundCoordinate(by)];
}

function coversAny(level: Level, clip: Level, by: Mm): boolean {
  return ITEM_KINDS.some((kind) => {
    const there = itemsOf<ItemKind>(level, kind).flatMap(spotOf);
    return itemsOf<ItemKind>(clip, kind)
      .flatMap(spotOf)
      .some(([x, y]) => there.some((spot) => distance(spot, [x + by, y + by]) <= SAME_SPOT));
  });
}

/** The middle of a thing; none for an opening, which goes where its wall goes. */
function spotOf(item: Item): readonly XY[] {
  if ('shape' in item) return [shapeMiddle(item.shape)];
  if ('at' in item) return [item.at];
  return 'from' in item ? [[(item.from[0] + item.to[0]) / 2, (item.from[1] + item.to[1]) / 2]] : [];
}
