import type { Level, Mm, Plan, XY } from '../plan/model.ts';
import { shapeBody } from '../plane/body.ts';
import type { Extent } from '../plane/extent.ts';
import type { EditResult } from './checked.ts';
import { checkedLevelEdit, levelOf } from './level.ts';
import { withIdentityKept } from './move.ts';
import { withOnlyItemsMoved } from './move-items.ts';
import { withSupportedItems } from './supported-items.ts';

/** What is aligned: an edge as seen on the page, or the middles, in a vertical `column` or a horizontal `row`. */
export type AlignTo = 'left' | 'right' | 'upper' | 'lower' | 'column' | 'row';
/** Direction of distribution: from left to right, or down the page. */
export type SpreadAlong = 'across' | 'down';

interface MovableItem {
  readonly id: string;
  readonly extent: Extent;
}
interface Moved {
  readonly id: string;
  readonly by: XY;
}

/**
 * Aligns fixtures, objects and detectors. The outermost edge stays; middles align to the middle of the first id,
 * which stays. Walls, openings and room labels are ignored because other items determine their position. Refused for
 * fewer than two items.
 */
export function alignedItems(plan: Plan, levelId: string, ids: readonly string[], to: AlignTo): EditResult {
  const things = movable(levelOf(plan, levelId), ids);
  const [first] = things;
  if (!first || things.length < 2) return { ok: false, reason: 'Select two things or more that stand on the floor.' };
  const measure = MEASURE[to];
  const values = things.map(({ extent }) => measure(extent));
  const target = TARGET[to](values);
  const across = to === 'left' || to === 'right' || to === 'column';
  const moves = things.map(({ id, extent }): Moved => {
    const by = target - measure(extent);
    return { id, by: across ? [by, 0] : [0, by] };
  });
  return moved(plan, levelId, moves);
}

const middleX = ({ minX, maxX }: Extent): Mm => (minX + maxX) / 2;
const middleY = ({ minY, maxY }: Extent): Mm => (minY + maxY) / 2;
const MEASURE: Readonly<Record<AlignTo, (extent: Extent) => Mm>> = {
  left: ({ minX }) => minX,
  right: ({ maxX }) => maxX,
  upper: ({ minY }) => minY,
  lower: ({ maxY }) => maxY,
  column: middleX,
  row: middleY,
};
const least = (values: readonly Mm[]): Mm => Math.min(...values);
const most = (values: readonly Mm[]): Mm => Math.max(...values);
const firstOf = ([value = 0]: readonly Mm[]): Mm => value;
const TARGET: Readonly<Record<AlignTo, (values: readonly Mm[]) => Mm>> = {
  left: least,
  right: most,
  upper: least,
  lower: most,
  column: firstOf,
  row: firstOf,
};

/**
 * Distributes fixtures, objects and detectors with equal gaps; the two outer ones stay. Refused for
 * fewer than three, and if the inner ones do not fit between the outer ones.
 */
export function spreadItems(plan: Plan, levelId: string, ids: readonly string[], along: SpreadAlong): EditResult {
  const from = ({ extent }: MovableItem): Mm => (along === 'across' ? extent.minX : extent.minY);
  const size = ({ extent: { minX, maxX, minY, maxY } }: MovableItem): Mm =>
    along === 'across' ? maxX - minX : maxY - minY;
  const middle = (thing: MovableItem): Mm => from(thing) + size(thing) / 2;
  const things = [...movable(levelOf(plan, levelId), ids)].sort((a, b) => middle(a) - middle(b));
  const [first] = things;
  const last = things.at(-1);
  if (!first || !last || things.length < 3)
    return { ok: false, reason: 'Select three things or more that stand on the floor.' };
  const between = things.slice(1, -1);
  const room = from(last) - from(first) - size(first) - between.reduce((sum, thing) => sum + size(thing), 0);
  if (room < 0)
    return { ok: false, reason: 'There is no room for them between the outer two. Move those apart first.' };
  const gap = room / (things.length - 1);
  let next = from(first) + size(first) + gap;
  const moves = between.map((thing): Moved => {
    const by = next - from(thing);
    next += size(thing) + gap;
    return { id: thing.id, by: along === 'across' ? [by, 0] : [0, by] };
  });
  return moved(plan, levelId, moves);
}

/** Returns the freely movable items, in the order of the ids. */
function movable(level: Level, ids: readonly string[]): readonly MovableItem[] {
  return ids.flatMap((id): readonly MovableItem[] => {
    const solid = [...level.fixtures, ...level.objects].find((each) => each.id === id);
    if (solid) return [{ id, extent: shapeBody(solid.shape).extent }];
    const detector = level.detectors.find((each) => each.id === id);
    if (!detector) return [];
    const { at, radius } = detector;
    const [x, y] = at;
    return [{ id, extent: { minX: x - radius, maxX: x + radius, minY: y - radius, maxY: y + radius } }];
  });
}

function moved(plan: Plan, levelId: string, moves: readonly Moved[]): EditResult {
  return checkedLevelEdit(plan, levelId, (level) => {
    const after = moves.reduce((next, { id, by }) => withOnlyItemsMoved(next, new Set([id]), by), level);
    return withIdentityKept(level, withSupportedItems(level, after, new Set(moves.map(({ id }) => id))));
  });
}
