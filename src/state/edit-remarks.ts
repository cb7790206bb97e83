import { levelOf } from '../../geometry/edit/level.ts';
import { MENDABLE } from '../../geometry/edit/mendable.ts';
import { detectorsWithoutSupport } from '../../geometry/edit/supported-items.ts';
import type { LevelModel, Notice } from '../../geometry/level/types.ts';
import { describeNotice, describeSupportLost } from '../../geometry/messages/index.ts';
import type { Level, Plan } from '../../geometry/plan/model.ts';
import { inWallRemark, inWalls, mendAction, oneWallAction, type Remark } from '../advice/wall-remarks.ts';
import { modelOf } from './selectors.ts';

/**
 * Returns a remark on problems that an edit caused: a detector that lost its support, a thing that reaches into a wall, a wall that lies on
 * another one, walls that miss one another. Null for none.
 */
export function remarkOn(before: Plan, after: Plan): Remark | null {
  const remarks = after.levels.flatMap((level) => {
    const was = before.levels.find(({ id }) => id === level.id);
    return was && was !== level ? levelRemarks(was, level, after.display.length) : [];
  });
  if (remarks.length === 0) return null;
  return {
    words: remarks.map(({ words }) => words).join(' '),
    action: remarks.find(({ action }) => action)?.action ?? null,
  };
}

type Unit = Plan['display']['length'];

function levelRemarks(was: Level, level: Level, unit: Unit): readonly Remark[] {
  const lost = describeSupportLost(detectorsWithoutSupport(was, level));
  const solid = was.walls !== level.walls || was.fixtures !== level.fixtures || was.objects !== level.objects;
  return [
    ...(lost ? [{ words: lost, action: null }] : []),
    ...(solid ? inWallRemarks(modelOf(was), modelOf(level), unit) : []),
    ...(was.walls === level.walls ? [] : noticeRemarks(modelOf(was), modelOf(level), unit)),
  ];
}

/** An overlap that grows by less than this is not remarked on, mm. */
const NEWS = 1;

function inWallRemarks(was: LevelModel, model: LevelModel, unit: Unit): readonly Remark[] {
  const depths = new Map(inWalls(was).map(({ id, by }) => [id, by ?? Number.POSITIVE_INFINITY]));
  return inWalls(model)
    .filter(({ id, by }) => (by ?? Number.POSITIVE_INFINITY) > (depths.get(id) ?? 0) + NEWS)
    .map((found) => inWallRemark(model.level, found, unit));
}

/** Walls that lie on one another, and gaps: each with the action that mends it. */
function noticeRemarks(was: LevelModel, model: LevelModel, unit: Unit): readonly Remark[] {
  const told = new Set(was.notices.filter(isTold).map(keyOf));
  return model.notices
    .filter((notice) => isTold(notice) && !told.has(keyOf(notice)))
    .map((notice) => ({
      words: describeNotice(notice, unit, model.level),
      action: isLaid(notice) ? oneWallAction(notice, model.level.id) : mendAction(notice, model.level.id),
    }));
}

const isLaid = ({ kind }: Notice): boolean => kind === 'walls-overlap';
const isTold = (notice: Notice): boolean => isLaid(notice) || MENDABLE.includes(notice.kind);
const keyOf = ({ kind, ids }: Notice): string => [kind, ...ids].join(' ');

/** Returns the move of a thing out of the wall that it reaches into, mm; null where it reaches into none. */
export function moveToFace(plan: Plan, levelId: string, id: string): readonly [dx: number, dy: number] | null {
  return inWalls(modelOf(levelOf(plan, levelId))).find((found) => found.id === id)?.out ?? null;
}
