import type { Mm, Plan, Wall } from '../plan/model.ts';
import { sameIfUnchanged } from '../plane/memoize.ts';
import { uncheckedLevelEdit } from './level.ts';

/** Returns the plan with the walls of a level that are so thick, mm, as somebody has measured them; the plan itself where none is. */
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
