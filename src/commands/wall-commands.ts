import { wallsRunningOn } from '../../geometry/edit/split-join.ts';
import { wallEndNames } from '../../geometry/messages/index.ts';
import { wallLength } from '../../geometry/plan/items.ts';
import type { Wall } from '../../geometry/plan/model.ts';
import { nearestParameter } from '../../geometry/plane/point.ts';
import { selectLevel } from '../state/selectors.ts';
import { joinWalls, splitWall } from '../state/wall-acts.ts';
import type { Act, ActPlace } from './command.ts';

const wallOf = ({ one }: ActPlace): Wall | null => (one?.list === 'walls' ? one.item : null);
const nextWall = (place: ActPlace, end: 'from' | 'to'): Wall | null => {
  const wall = wallOf(place);
  const found = wall && wallsRunningOn(selectLevel(place.state), wall).find((each) => each.end === end);
  return found ? found.other : null;
};
const join = (end: 'from' | 'to'): Act => ({
  id: `join-${end}`,
  group: 'move',
  name: (place) => {
    const wall = wallOf(place);
    return `Join it at its ${wall ? wallEndNames(wall)[end] : end} end`;
  },
  applies: (place) => nextWall(place, end) !== null,
  run: (place) => {
    const [wall, other] = [wallOf(place), nextWall(place, end)];
    if (wall && other) joinWalls(wall.id, other.id);
  },
});

/** What can be done with a wall and with nothing else. */
export const WALL_ACTS: readonly Act[] = [
  {
    id: 'split-here',
    group: 'here',
    name: 'Split the wall here',
    applies: (place) => wallOf(place) !== null && place.at !== null,
    run: (place) => {
      const wall = wallOf(place);
      if (wall && place.at) splitWall(wall.id, nearestParameter(place.at, wall.from, wall.to) * wallLength(wall));
    },
  },
  {
    id: 'split-by-press',
    group: 'move',
    name: 'Press where to split it',
    applies: (place) => wallOf(place) !== null,
    run: ({ state, one }) => one && state.setTool({ kind: 'split-wall', id: one.item.id }),
  },
  join('from'),
  join('to'),
];
