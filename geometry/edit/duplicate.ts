import { itemName, wallLength } from '../plan/items.ts';
import { ID_PREFIX, ITEM_KINDS, type Item, type ItemKind, itemsOf, LIST_OF } from '../plan/kinds.ts';
import type { Detector, Level, Mm, Opening, Plan, Wall, XY } from '../plan/model.ts';
import { translateShape } from '../plane/rigid-motion.ts';
import { checkedPlan, type EditResult } from './checked.ts';
import { copyOfDetector, copyOfOpening, copyOfWall, withHeightsOpen } from './copied-answers.ts';
import { freshIds } from './free-id.ts';
import { levelOf, uncheckedLevelEdit } from './level.ts';

/** The plan with the copies, and their ids in the order of the originals. */
export type Copies =
  | { readonly ok: true; readonly plan: Plan; readonly ids: readonly string[] }
  | Extract<EditResult, { ok: false }>;

/**
 * Copies items to a position dx, dy beside them, mm, with new ids. A wall brings its openings; an opening copied
 * alone goes to the nearest free position on its wall, and is refused if there is none. A pair copied as a pair is a
 * new pair; one detector of a pair becomes single. A label that ends in a number gets the next free number. Readings
 * are not copied, nor is what was answered or measured for the original: a detector's support, that a wall is interior, an opening's shade,
 * heights, thickness.
 */
export function duplicatedItems(plan: Plan, levelId: string, ids: readonly string[], dx: Mm, dy: Mm): Copies {
  return copiedInto(plan, levelId, levelOf(plan, levelId), ids, [dx, dy]);
}

/**
 * Copies items of `source`, which need not be a level of this plan, to a level of it, moved by `by`, mm. As
 * `duplicatedItems`, but labels and pairs that the plan does not have are kept. An opening whose wall is not copied
 * needs that wall on the level.
 */
export function copiedInto(plan: Plan, levelId: string, source: Level, ids: readonly string[], by: XY): Copies {
  const chosen = new Set(ids);
  const newId = freshIds(plan);
  const newIds = new Map<string, string>();
  const copied: { kind: ItemKind; original: Item }[] = [];
  for (const kind of ITEM_KINDS) {
    for (const original of itemsOf<ItemKind>(source, kind)) {
      const withWall = kind === 'opening' && chosen.has((original as Opening).wall);
      if (!chosen.has(original.id) && !withWall) continue;
      newIds.set(original.id, newId(ID_PREFIX[kind]));
      copied.push({ kind, original });
    }
  }
  if (copied.length === 0) return { ok: true, plan, ids: [] };
  let next = levelOf(plan, levelId);
  const remark = detectorMarks(
    plan,
    source.detectors.filter(({ id }) => newIds.has(id)),
  );
  for (const { kind, original } of copied) {
    const id = newIds.get(original.id) ?? '';
    let copy: Item = { ...shifted(original, by), id };
    if (kind === 'detector') copy = remark(copyOfDetector(copy as Detector));
    if (kind === 'wall') copy = copyOfWall(copy as Wall);
    if ('shape' in copy) copy = withHeightsOpen(copy);
    if (kind === 'opening') {
      const placed = placedOpening(next, copyOfOpening(copy as Opening), newIds);
      if (!placed) return { ok: false, reason: `${itemName(kind, copy)} has no free place for a copy on its wall.` };
      copy = placed;
    }
    next = { ...next, [LIST_OF[kind]]: [...itemsOf<ItemKind>(next, kind), copy] };
  }
  const checked = checkedPlan(
    plan,
    uncheckedLevelEdit(plan, levelId, () => next),
  );
  const order = ids.flatMap((id) => newIds.get(id) ?? []);
  return checked.ok ? { ok: true, plan: checked.plan, ids: order } : checked;
}

function shifted<T extends Item>(item: T, by: XY): T {
  const plus = ([x, y]: XY): XY => [x + by[0], y + by[1]];
  if ('shape' in item) return { ...item, shape: translateShape(item.shape, by) };
  if ('at' in item) return { ...item, at: plus(item.at) };
  return 'thickness' in item ? { ...item, from: plus(item.from), to: plus(item.to) } : item;
}

/**
 * Returns the opening on the copy of its wall at the same offset; or on the same wall at the nearest free offset; or
 * null.
 */
function placedOpening(level: Level, copy: Opening, newIds: ReadonlyMap<string, string>): Opening | null {
  const copiedWall = newIds.get(copy.wall);
  if (copiedWall !== undefined) return { ...copy, wall: copiedWall };
  const wall = level.walls.find(({ id }) => id === copy.wall);
  const others = level.openings.filter((opening) => opening.wall === copy.wall);
  const most = (wall ? wallLength(wall) : 0) - copy.width;
  const free = others
    .flatMap(({ offset, width }) => [offset + width, offset - copy.width])
    .filter((offset) => offset >= 0 && offset <= most)
    // Adjacent is free: an overlap is more than a rounding error.
    .filter((offset) =>
      others.every((o) => offset + copy.width <= o.offset + 1e-6 || offset >= o.offset + o.width - 1e-6),
    )
    // Of two equally near positions, the one farther along.
    .sort((a, b) => farFrom(copy.offset, a) - farFrom(copy.offset, b));
  const [offset] = free;
  return offset === undefined ? null : { ...copy, offset };
}

function farFrom(offset: Mm, other: Mm): Mm {
  return other > offset ? other - offset : offset - other + 1e-6;
}

/** Returns a function that gives copies of detectors their pair and label. */
function detectorMarks(plan: Plan, originals: readonly Detector[]): (copy: Detector) => Detector {
  const all = plan.levels.flatMap(({ detectors }) => detectors);
  const pairs = new Set(all.map(({ pair }) => pair));
  const labels = new Set(all.map(({ label }) => label));
  const newPairs = new Map<string | null, string | null>([[null, null]]);
  for (const { pair } of originals) {
    if (newPairs.has(pair)) continue;
    const together = originals.filter((one) => one.pair === pair).length > 1;
    const name = together ? freePair(pair, pairs) : null;
    pairs.add(name);
    newPairs.set(pair, name);
  }
  return (copy) => {
    const label = labels.has(copy.label) ? freeLabel(copy.label, labels) : copy.label;
    labels.add(label);
    return { ...copy, label, pair: newPairs.get(copy.pair) ?? null };
  };
}

/** Returns its own name if free; else A, B, … Z, then AA, AB and so on. */
function freePair(own: string | null, taken: ReadonlySet<string | null>): string {
  if (own !== null && !taken.has(own)) return own;
  const letters = 'ABCDEFGHIJKLMNOPQRSTUVWXYZ';
  for (let number = 0; ; number++) {
    const last = letters.charAt(number % 26);
    const name = number < 26 ? last : `${letters.charAt((Math.floor(number / 26) - 1) % 26)}${last}`;
    if (!taken.has(name)) return name;
    if (number > 26 * 27) return `${name}${taken.size}`;
  }
}

/** Returns the next free label: "A2" for "A1", "Attic 2" for "Attic"; "" stays "". */
function freeLabel(label: string, taken: ReadonlySet<string>): string {
  if (label === '') return '';
  const [, stem = '', digits = ''] = /^(.*?)(\d{0,9})$/s.exec(label) ?? [];
  const head = digits === '' ? `${label} ` : stem;
  let number = digits === '' ? 2 : Number(digits) + 1;
  while (taken.has(`${head}${number}`)) number += 1;
  return `${head}${number}`;
}
