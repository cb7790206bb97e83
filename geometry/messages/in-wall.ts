import { itemById, itemName } from '../plan/items.ts';
import type { Level, Plan } from '../plan/model.ts';
import type { InWall } from '../snap/in-wall.ts';
import { formatLength } from '../units/index.ts';

/**
 * Describes how far an item reaches into a wall, and what to do: "Desk reaches 4 1/2 in into a wall. Set it at the face
 * of the wall."
 */
export function describeInWall(level: Level, { id, by, out }: InWall, unit: Plan['display']['length']): string {
  const found = itemById(level, id);
  const name = found ? itemName(found.kind, found.item) : 'A thing';
  const reach = by === null ? 'stands in a wall' : `reaches ${formatLength(by, unit, 'up')} into a wall`;
  return `${name} ${reach}. ${out ? 'Move it to the face of the wall, or move the wall.' : 'Move it, or make it smaller.'}`;
}
