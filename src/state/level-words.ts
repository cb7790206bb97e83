import { levelBar } from '../../geometry/check/level.ts';
import { type Beside, levelBelow, levelsBeside } from '../../geometry/edit/index.ts';
import { ITEM_LISTS } from '../../geometry/edit/listed-items.ts';
import { capital, counted, GROUND_PHRASE, listed } from '../../geometry/messages/index.ts';
import type { Level, Plan } from '../../geometry/plan/model.ts';
import { levelHeading, levelName } from '../../geometry/plan/nouns.ts';

/** Messages after an edit of the levels. */

export function addedWords(level: Level, beside: Level, where: Beside): string {
  const added = `${level.name} is added ${where} ${levelName(beside)}.`;
  if (where === 'above' || beside.ground === 'none' || beside.groundAnswered === false)
    return `${added} Enter whether it is lived in.`;
  return `${added} ${levelHeading(beside)} is noted as ${GROUND_PHRASE[beside.ground]}: check whether that is still right.`;
}

/** Returns where the level is now, and whether it is a level to test there. */
export function placeWords(plan: Plan, levelId: string): string {
  const level = plan.levels.find(({ id }) => id === levelId);
  if (!level) return '';
  return `${levelHeading(level)} ${lieWords(plan, levelId)} now. ${capital(levelBar(plan, level)) || 'It is a level to test.'}`;
}

function lieWords(plan: Plan, levelId: string): string {
  const beside = levelsBeside(plan, levelId);
  if (beside.length > 0) return `lies at the height of ${listed(beside.map(levelName))}`;
  const under = levelBelow(plan, levelId);
  return under ? `lies above ${levelName(under)}` : 'is the lowest level';
}

export function goneWords(level: Level): string {
  const things = ITEM_LISTS.reduce((sum, list) => sum + level[list].length, 0);
  const parts = [things > 0 ? counted(things, 'thing') : '', level.tracing ? 'its picture' : ''].filter(Boolean);
  return `${levelHeading(level)}${parts.length > 0 ? ` with ${listed(parts)}` : ''} is deleted. Undo restores it.`;
}
