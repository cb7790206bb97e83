/** Stand-in for `geometry/plan/edit.ts`: pure edits Plan -> Plan, replaced as they land. */
import type {
  Detector,
  Fixture,
  Level,
  Opening,
  Plan,
  PlanObject,
  RoomLabel,
  Shape,
  Wall,
  XY,
} from '../../geometry/plan/model.ts';

export type ItemList = 'walls' | 'openings' | 'rooms' | 'fixtures' | 'objects' | 'detectors';
export const ITEM_LISTS: readonly ItemList[] = ['walls', 'openings', 'rooms', 'fixtures', 'objects', 'detectors'];
export type Item = Wall | Opening | RoomLabel | Fixture | PlanObject | Detector;
export type FoundItem =
  | { readonly list: 'walls'; readonly item: Wall }
  | { readonly list: 'openings'; readonly item: Opening }
  | { readonly list: 'rooms'; readonly item: RoomLabel }
  | { readonly list: 'fixtures'; readonly item: Fixture }
  | { readonly list: 'objects'; readonly item: PlanObject }
  | { readonly list: 'detectors'; readonly item: Detector };

export function findItem(level: Level, id: string): FoundItem | null {
  for (const list of ITEM_LISTS) {
    const item = level[list].find((each) => each.id === id);
    // The list names the type of its items.
    if (item) return { list, item } as FoundItem;
  }
  return null;
}

export function withLevel(plan: Plan, levelId: string, change: (level: Level) => Level): Plan {
  const levels = plan.levels.map((level) => (level.id === levelId ? change(level) : level));
  return levels.every((level, index) => level === plan.levels[index]) ? plan : { ...plan, levels };
}

export function withItem(plan: Plan, levelId: string, list: ItemList, item: Item): Plan {
  return withLevel(plan, levelId, (level) => ({ ...level, [list]: [...level[list], item] }));
}

export function withPatch(plan: Plan, levelId: string, id: string, patch: Readonly<Record<string, unknown>>): Plan {
  return withLevel(plan, levelId, (level) => {
    const found = findItem(level, id);
    if (!found) return level;
    const items = (level[found.list] as readonly Item[]).map((item) => (item.id === id ? { ...item, ...patch } : item));
    return { ...level, [found.list]: items };
  });
}

/** Openings go with their wall, readings with their detector. */
export function withoutItems(plan: Plan, levelId: string, ids: readonly string[]): Plan {
  const gone = new Set(ids);
  const next = withLevel(plan, levelId, (level) => ({
    ...level,
    walls: level.walls.filter(({ id }) => !gone.has(id)),
    openings: level.openings.filter(({ id, wall }) => !gone.has(id) && !gone.has(wall)),
    rooms: level.rooms.filter(({ id }) => !gone.has(id)),
    fixtures: level.fixtures.filter(({ id }) => !gone.has(id)),
    objects: level.objects.filter(({ id }) => !gone.has(id)),
    detectors: level.detectors.filter(({ id }) => !gone.has(id)),
  }));
  return { ...next, readings: next.readings.filter(({ detector }) => !gone.has(detector)) };
}

export function nextId(plan: Plan, prefix: string): string {
  const taken = new Set<string>();
  for (const level of plan.levels) {
    taken.add(level.id);
    for (const list of ITEM_LISTS) for (const { id } of level[list]) taken.add(id);
  }
  let number = 1;
  while (taken.has(`${prefix}${number}`)) number += 1;
  return `${prefix}${number}`;
}

const plus = ([x, y]: XY, dx: number, dy: number): XY => [x + dx, y + dy];

function shapeMoved(shape: Shape, dx: number, dy: number): Shape {
  if ('circle' in shape) return { circle: { ...shape.circle, center: plus(shape.circle.center, dx, dy) } };
  if ('box' in shape) return { box: { ...shape.box, center: plus(shape.box.center, dx, dy) } };
  return { polygon: { ...shape.polygon, points: shape.polygon.points.map((point) => plus(point, dx, dy)) } };
}

/** Walls take their openings along; an opening alone stays on its wall. */
export function withItemsMoved(plan: Plan, levelId: string, ids: readonly string[], dx: number, dy: number): Plan {
  const moving = new Set(ids);
  return withLevel(plan, levelId, (level) => ({
    ...level,
    walls: level.walls.map((wall) =>
      moving.has(wall.id) ? { ...wall, from: plus(wall.from, dx, dy), to: plus(wall.to, dx, dy) } : wall,
    ),
    rooms: level.rooms.map((room) => (moving.has(room.id) ? { ...room, at: plus(room.at, dx, dy) } : room)),
    fixtures: level.fixtures.map((each) =>
      moving.has(each.id) ? { ...each, shape: shapeMoved(each.shape, dx, dy) } : each,
    ),
    objects: level.objects.map((each) =>
      moving.has(each.id) ? { ...each, shape: shapeMoved(each.shape, dx, dy) } : each,
    ),
    detectors: level.detectors.map((each) => (moving.has(each.id) ? { ...each, at: plus(each.at, dx, dy) } : each)),
  }));
}

const PREFIX: Readonly<Record<ItemList, string>> = {
  walls: 'w',
  openings: 'o',
  rooms: 'r',
  fixtures: 'f',
  objects: 't',
  detectors: 'd',
};
export function prefixOf(list: ItemList): string {
  return PREFIX[list];
}

/** Copies beside the originals; answers the ids of the copies, in the order of `ids`. Openings of a copied wall come along. */
export function withCopies(
  plan: Plan,
  levelId: string,
  ids: readonly string[],
  dx: number,
  dy: number,
): { readonly plan: Plan; readonly ids: readonly string[] } {
  let next = plan;
  const copies: string[] = [];
  for (const id of ids) {
    const level = next.levels.find((each) => each.id === levelId);
    const found = level && findItem(level, id);
    if (!found) continue;
    const copyId = nextId(next, PREFIX[found.list]);
    next = withItem(next, levelId, found.list, { ...found.item, id: copyId });
    copies.push(copyId);
  }
  return { plan: withItemsMoved(next, levelId, copies, dx, dy), ids: copies };
}
