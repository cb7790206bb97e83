import type { Mm, Plan, Wall } from '../plan/model.ts';
import { sameIfUnchanged } from '../plane/memoize.ts';
import { uncheckedLevelEdit } from './level.ts';

/** Returns the plan with every wall of a level that has one of these thicknesses, mm, marked as measured; the same plan if there is none. */
export function withThicknessMeasured(plan: Plan, levelId: string, thicknesses: readonly Mm[]): Plan {
  const measured = (wall: Wall): Wall => {
    if (wall.thicknessAnswered !== false || !thicknesses.includes(wall.thickness)) return wall;
    const { thicknessAnswered: _, ...rest } = wall;
    return rest;
  };
  return uncheckedLevelEdit(plan, levelId, (level) => {
    const walls = sameIfUnchanged(level.walls, level.walls.map(measured));
    return walls === level.walls ? level : { ...level, walls };
  });
}
