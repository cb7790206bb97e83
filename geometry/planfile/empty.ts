import * as v from 'valibot';
import type { Level, Plan } from '../plan/model.ts';
import { LevelSchema } from './schema/level.ts';
import { PlanSchema } from './schema/plan.ts';
import { withDefaults } from './schema/walk.ts';

/** 7 ft 6 in, a usual basement ceiling, in mm: common practice, no published source. To be measured on site. */
const CEILING = 2286;

/**
 * Returns a plan of one empty basement, displayed in feet and inches. Every key that a file may omit has the default
 * of the schema. The time zone is UTC because the place is not known; the app sets its own.
 */
export function emptyPlan(): Plan {
  const plan = { format: 'stillspot-plan', version: 1, levels: [emptyLevel('L1')] };
  return v.parse(PlanSchema, withDefaults(PlanSchema, plan)) as Plan;
}

/** Returns a lived-in basement with nothing drawn: the lowest level, 7 ft 6 in high. */
export function emptyLevel(id: string): Level {
  const level = { id, name: 'Basement', order: 0, ceiling: CEILING, living: 'lived-in', ground: 'basement', walls: [] };
  return v.parse(LevelSchema, withDefaults(LevelSchema, level)) as Level;
}
