import { levelExtent } from '../level/level-extent.ts';
import { ITEM_KINDS, type Item, type ItemKind, itemsOf } from '../plan/kinds.ts';
import type { Level, Mm, Plan, XY } from '../plan/model.ts';
import { shapeMiddle } from '../plane/body.ts';
import { distance, roundCoordinate } from '../plane/point.ts';
import { type Copies, copiedInto } from './duplicate.ts';
import { levelOf } from './level.ts';

/** Items closer than this are at the same position, mm: the rounding to 1/64 in. */
const SAME_SPOT: Mm = 0.5;

/**
 * Returns the level with only these items, for the clipboard. A wall brings its openings; an opening without its wall
 * is omitted.
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

/** Copies everything of a clip to a level, moved by `by`, mm; new ids, otherwise as `copiedInto`. */
export function pastedItems(plan: Plan, levelId: string, clip: Level, by: XY): Copies {
  const ids = ITEM_KINDS.flatMap((kind) => itemsOf<ItemKind>(clip, kind).map(({ id }) => id));
  return copiedInto(plan, levelId, clip, ids, by);
}

/**
 * Returns how far to move a clip, mm. With `at`, its middle goes there. Otherwise it keeps its position, shifted by
 * `step` to the right and down until no item of the same kind is at that position. [0, 0] for an empty clip.
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

/** Returns the middle of an item; none for an opening, which follows its wall. */
function spotOf(item: Item): readonly XY[] {
  if ('shape' in item) return [shapeMiddle(item.shape)];
  if ('at' in item) return [item.at];
  return 'from' in item ? [[(item.from[0] + item.to[0]) / 2, (item.from[1] + item.to[1]) / 2]] : [];
}
