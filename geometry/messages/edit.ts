import { footprintSize } from '../dimension/footprint.ts';
import type { LevelModel } from '../level/types.ts';
import { wallLength } from '../plan/items.ts';
import { ITEM_KINDS, type Item, itemsOf } from '../plan/kinds.ts';
import type { Level, Plan, Shape, Wall, XY } from '../plan/model.ts';
import { counted, levelName, listed } from '../plan/nouns.ts';
import { direction } from '../plane/bearing.ts';
import { shapeRing } from '../plane/body.ts';
import { along } from '../plane/point.ts';
import { formatLength, formatMeasured, type LengthUnit } from '../units/index.ts';
import { spokenName } from './spoken-name.ts';
import { compassPoint, type North } from './subject.ts';

/** The model of a level, for the names of its rooms. */
type ModelOf = (level: Level) => LevelModel;

/** More things than this are counted, not named. */
const MOST_NAMED = 3;
/** An item that moved by less than this counts as not moved, mm. */
const STILL = 0.01;

/**
 * Returns what an edit changed in the levels and their items, in words: "moved A1 3 ft east", "deleted door 2 of Bedroom". "" if it changed
 * none of that. Directions are compass directions.
 */
export function describeEdit(before: Plan, after: Plan, modelOf: ModelOf): string {
  const old = new Map(before.levels.map((level) => [level.id, level]));
  const now = new Set(after.levels.map(({ id }) => id));
  const levels = [
    ...after.levels.filter(({ id }) => !old.has(id)).map((level) => `added level ${levelName(level)}`),
    ...before.levels.filter(({ id }) => !now.has(id)).map((level) => `deleted level ${levelName(level)}`),
  ];
  const items = after.levels.flatMap((level) => {
    const was = old.get(level.id);
    return was && was !== level ? describeLevelEdit(was, level, after, modelOf) : [];
  });
  return [...levels, ...items].join(', ');
}

function describeLevelEdit(before: Level, after: Level, plan: Plan, modelOf: ModelOf): readonly string[] {
  const [was, is] = [itemsById(before), itemsById(after)];
  const gone = [...was.keys()].filter((id) => !is.has(id));
  const come = [...is.keys()].filter((id) => !was.has(id));
  const namesOf = (level: Level, ids: readonly string[]) => ids.map((id) => spokenName(level, modelOf(level), id));
  // An opening that is added or deleted with its wall is not named separately.
  const openingsToo = (level: Level, ids: readonly string[]) =>
    ids.filter((id) => !ids.includes(level.openings.find((one) => one.id === id)?.wall ?? ''));
  const kept = [...is].flatMap(([id, item]): readonly Kept[] => {
    const old = was.get(id);
    return old && old !== item ? [{ id, old, item }] : [];
  });
  return [
    named('deleted', namesOf(before, openingsToo(before, gone))),
    named('added', namesOf(after, openingsToo(after, come))),
    ...describeKept(kept, after, plan, modelOf),
    after.name === before.name ? '' : `renamed the level to ${levelName(after)}`,
    after.order === before.order ? '' : `moved the level ${after.order > before.order ? 'up' : 'down'}`,
  ].filter(Boolean);
}

const itemsById = (level: Level): ReadonlyMap<string, Item> =>
  new Map(ITEM_KINDS.flatMap((kind) => itemsOf(level, kind).map((item) => [item.id, item] as const)));

function named(verb: string, names: readonly string[]): string {
  if (names.length === 0) return '';
  return `${verb} ${names.length > MOST_NAMED ? counted(names.length, 'thing') : listed(names)}`;
}

/** An item that exists before and after the edit, and has changed. */
interface Kept {
  readonly id: string;
  readonly old: Item;
  readonly item: Item;
}

/** Names items that moved together in one phrase; omits walls that only follow a moved one, and openings that follow their wall. */
function describeKept(kept: readonly Kept[], level: Level, plan: Plan, modelOf: ModelOf): readonly string[] {
  const unit = plan.display.length;
  const moves = new Map<string, string[]>();
  const changed: Kept[] = [];
  for (const each of kept) {
    const by = movedBy(each);
    const way = by && wayInWords(by, unit, plan.site);
    if (way) moves.set(way, [...(moves.get(way) ?? []), spokenName(level, modelOf(level), each.id)]);
    else changed.push(each);
  }
  const hasMoves = moves.size > 0;
  const hasWalls = hasMoves || changed.some(({ item }) => 'thickness' in item);
  const own = changed.filter(({ item }) => !(hasMoves && 'thickness' in item) && !(hasWalls && 'wall' in item));
  const name = (id: string) => spokenName(level, modelOf(level), id);
  const changes =
    own.length > MOST_NAMED
      ? [`changed ${counted(own.length, 'thing')}`]
      : own.map((each) => {
          const slid = slidBy(each, level);
          return slid
            ? `moved ${name(each.id)} ${wayInWords(slid, unit, plan.site)}`
            : changeInWords(each, name(each.id), unit);
        });
  return [...[...moves].map(([way, names]) => `${named('moved', names)} ${way}`), ...changes];
}

function wayInWords(by: XY, unit: LengthUnit, north: North): string {
  return `${formatLength(Math.hypot(...by), unit)} ${compassPoint(direction([0, 0], by), north)}`;
}

/** Returns how far an item was moved, mm; null if anything but its position has changed. */
function movedBy({ old, item }: Kept): XY | null {
  const [from, to] = [pointsOf(old), pointsOf(item)];
  const [a, b] = [from[0], to[0]];
  if (!a || !b || from.length !== to.length) return null;
  const by: XY = [b[0] - a[0], b[1] - a[1]];
  const same = from.every(([x, y], index) => {
    const [px, py] = to[index] as XY;
    return Math.abs(px - x - by[0]) < STILL && Math.abs(py - y - by[1]) < STILL;
  });
  return same && Math.hypot(...by) >= STILL ? by : null;
}

/** Returns how far an opening was moved along its wall, mm; null if something else has changed. */
function slidBy({ old, item }: Kept, { walls }: Level): XY | null {
  if (!('wall' in item && 'wall' in old) || item.wall !== old.wall || item.width !== old.width) return null;
  const wall = walls.find(({ id }) => id === item.wall);
  const way = item.offset - old.offset;
  const length = wall ? wallLength(wall) : 0;
  if (!wall || length === 0 || Math.abs(way) < STILL) return null;
  const [x, y] = along(wall.from, wall.to, way / length);
  return [x - wall.from[0], y - wall.from[1]];
}

/** Returns the points that set an item out; none for an opening, which is set out along its wall. */
function pointsOf(item: Item): readonly XY[] {
  if ('shape' in item) return shapeRing(item.shape);
  if ('at' in item) return [item.at];
  return 'from' in item ? [item.from, item.to] : [];
}

function changeInWords({ old, item }: Kept, name: string, unit: LengthUnit): string {
  if ('name' in item && 'name' in old && item.name !== old.name) return `renamed ${old.name.trim() || 'it'} to ${name}`;
  if ('label' in item && 'label' in old && item.label !== old.label) return `renamed ${old.label || 'it'} to ${name}`;
  const size = sizeInWords(old, item, unit);
  return size ? `${name} is now ${size}` : `changed ${name}`;
}

/** Returns the measure that has changed, in words; "" if none has. */
function sizeInWords(old: Item, item: Item, unit: LengthUnit): string {
  if ('shape' in item && 'shape' in old) {
    const shape = shapeInWords(old.shape, item.shape, unit);
    return shape || item.top === old.top ? shape : `up to ${formatLength(item.top, unit)}`;
  }
  if ('wall' in item && 'wall' in old) {
    if (item.width !== old.width) return `${formatLength(item.width, unit)} wide`;
    return '';
  }
  if ('thickness' in item && 'thickness' in old && wallLength(item) !== wallLength(old as Wall))
    return `${formatMeasured(wallLength(item), unit)} long`;
  if ('base' in item && 'base' in old && item.base !== old.base)
    return `${formatLength(item.base, unit)} above the floor`;
  return '';
}

function shapeInWords(old: Shape, shape: Shape, unit: LengthUnit): string {
  const [was, is] = [footprintSize(old), footprintSize(shape)];
  const length = (mm: number | null) => formatLength(mm ?? 0, unit);
  if (is.across !== was.across && is.across !== null) return `${length(is.across)} across`;
  if (is.width !== was.width || is.depth !== was.depth) return `${length(is.width)} × ${length(is.depth)}`;
  return is.turn !== was.turn && is.turn !== null ? `turned to ${Math.round(is.turn)}°` : '';
}
