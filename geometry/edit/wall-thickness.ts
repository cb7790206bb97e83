import type { Mm, Plan, Wall } from '../plan/model.ts';
import { uncheckedLevelEdit } from './level.ts';

/** Returns the plan with the walls of a level that are so thick, mm, as somebody has measured them. */
export function withThicknessMeasured(plan: Plan, levelId: string, thicknesses: readonly Mm[]): Plan {
  const measured = (wall: Wall): Wall => {
    if (wall.thicknessAnswered !== false || !thicknesses.includes(wall.thickness)) return wall;
    const { thicknessAnswered: _, ...rest } = wall;
    return rest;
  };
  return uncheckedLevelEdit(plan, levelId, (level) => ({ ...level, walls: level.walls.map(measured) }));
}
