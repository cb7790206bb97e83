import type { Level, Protocol } from '../../geometry/plan/model.ts';
import { capital, ROOM_USE_NOUN } from '../../geometry/plan/nouns.ts';
import { emptyLevel } from '../../geometry/planfile/empty.ts';
import type { CardAnswers } from './answers.ts';
import { farOpenings, roomOpenings } from './room-openings.ts';
import { type RoomSize, roomFixtures, roomWalls, sizeOf } from './room-plan.ts';
import { LEVELS } from './things.ts';

/** The floors of a card's house as levels of a plan. */

/** Returns the level of the room, without a kit, last; before it the level below, if the answer has one. */
export function drawnLevels(answers: CardAnswers, protocol: Protocol): readonly Level[] {
  const row = answers.level === null ? null : LEVELS[answers.level];
  const below = row?.below ? [{ ...emptyLevel('L1'), ceilingAnswered: false, ...row.below, order: 0 }] : [];
  const bare: Level = {
    ...emptyLevel(`L${below.length + 1}`),
    ...(answers.ceiling === null ? { ceilingAnswered: false } : { ceiling: answers.ceiling }),
    ...(row ? row.level : { livingAnswered: false, groundAnswered: false }),
    order: below.length,
  };
  const size = sizeOf(answers);
  return [...below, size ? drawnLevel(bare, answers, size, protocol) : bare];
}

function drawnLevel(bare: Level, answers: CardAnswers, size: RoomSize, protocol: Protocol): Level {
  const walls = roomWalls(answers, size);
  const far = farOpenings(answers, size, protocol);
  const { use } = answers;
  const at = [size.across / 2, size.along / 2] as const;
  return {
    ...bare,
    walls: [...walls, ...far.map(({ wall }) => wall)],
    openings: [...roomOpenings(answers, walls, size), ...far.map(({ opening }) => opening)],
    fixtures: roomFixtures(answers, size, bare, protocol),
    rooms: use === null ? [] : [{ id: 'r1', name: capital(ROOM_USE_NOUN[use]), use, at }],
  };
}
