import { ID_PREFIX } from '../plan/kinds.ts';
import type { Opening, Plan, Wall } from '../plan/model.ts';
import { checkedPlan, type EditResult } from './checked.ts';
import { copyOfOpening, copyOfWall } from './copied-answers.ts';
import { freshIds } from './free-id.ts';
import { levelOf, uncheckedLevelEdit } from './level.ts';

/** The plan with the copies, and how many walls and openings were copied. */
export type CopiedWalls =
  | { readonly ok: true; readonly plan: Plan; readonly walls: number; readonly openings: number }
  | Extract<EditResult, { ok: false }>;

/**
 * Copies walls of one level to another at the same position with new ids, and their openings, without shade, if requested. A wall that
 * the other level already has is not copied again, and its openings stay: copying twice changes nothing.
 */
export function wallsCopied(
  plan: Plan,
  fromId: string,
  toId: string,
  wallIds: ReadonlySet<string>,
  withOpenings: boolean,
): CopiedWalls {
  const [source, target] = [levelOf(plan, fromId), levelOf(plan, toId)];
  const newId = freshIds(plan);
  const walls: Wall[] = [];
  const openings: Opening[] = [];
  for (const wall of source.walls) {
    if (!wallIds.has(wall.id) || target.walls.some((each) => sameLine(each, wall))) continue;
    const id = newId(ID_PREFIX.wall);
    walls.push({ ...copyOfWall(wall), id });
    if (!withOpenings) continue;
    for (const opening of source.openings) {
      if (opening.wall === wall.id)
        openings.push({ ...copyOfOpening(opening), id: newId(ID_PREFIX.opening), wall: id });
    }
  }
  const counts = { walls: walls.length, openings: openings.length };
  if (walls.length === 0) return { ok: true, plan, ...counts };
  const copied = uncheckedLevelEdit(plan, toId, (level) => ({
    ...level,
    walls: [...level.walls, ...walls],
    openings: [...level.openings, ...openings],
  }));
  const checked = checkedPlan(plan, copied);
  return checked.ok ? { ok: true, plan: checked.plan, ...counts } : checked;
}

/** Returns whether two walls have the same end points, in either order. */
function sameLine(a: Wall, b: Wall): boolean {
  const same = (p: Wall['from'], q: Wall['from']) => p[0] === q[0] && p[1] === q[1];
  return (same(a.from, b.from) && same(a.to, b.to)) || (same(a.from, b.to) && same(a.to, b.from));
}
