import type { Level } from '../../geometry/plan/model.ts';
import { capital, ROOM_USE_NOUN } from '../../geometry/plan/nouns.ts';
import { emptyLevel } from '../../geometry/planfile/empty.ts';
import type { CardAnswers } from './answers.ts';
import { farOpening, roomOpenings } from './room-openings.ts';
import { type RoomSize, roomFixtures, roomWalls, sizeOf } from './room-plan.ts';
import { LEVELS } from './things.ts';

/** The floors of a card's house as levels of a plan. */

/** Returns the level of the room, without a kit, last; before it the level below, if the answer has one. */
export function drawnLevels(answers: CardAnswers): readonly Level[] {
  const row = answers.level === null ? null : LEVELS[answers.level];
  const below = row?.below ? [{ ...emptyLevel('L1'), ceilingAnswered: false, ...row.below, order: 0 }] : [];
  const bare: Level = {
    ...emptyLevel(`L${below.length + 1}`),
    ...(answers.ceiling === null ? { ceilingAnswered: false } : { ceiling: answers.ceiling }),
    ...(row ? row.level : { livingAnswered: false, groundAnswered: false }),
    order: below.length,
  };
  const size = sizeOf(answers);
  return [...below, size ? drawnLevel(bare, answers, size) : bare];
}

function drawnLevel(bare: Level, answers: CardAnswers, size: RoomSize): Level {
  const walls = roomWalls(answers, size);
  const far = farOpening(answers, size);
  const { use } = answers;
  const at = [size.across / 2, size.along / 2] as const;
  return {
    ...bare,
    walls: far ? [...walls, far.wall] : walls,
    openings: [...roomOpenings(answers, walls, size), ...(far ? [far.opening] : [])],
    fixtures: roomFixtures(answers, size, bare),
    rooms: use === null ? [] : [{ id: 'r1', name: capital(ROOM_USE_NOUN[use]), use, at }],
  };
}
