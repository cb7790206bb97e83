import { wallsRunningOn } from '../../geometry/edit/walls-running-on.ts';
import { wallEndNames } from '../../geometry/messages/index.ts';
import { wallLength } from '../../geometry/plan/items.ts';
import type { OpeningKind, Wall } from '../../geometry/plan/model.ts';
import { nearestParameter } from '../../geometry/plane/point.ts';
import { createOpeningTool } from '../editor/tools/opening-tool.ts';
import { pressAt } from '../editor/tools/tool-context.ts';
import { selectLevel } from '../state/selectors.ts';
import type { Command, Target } from './command.ts';
import { withLateEdits } from './late-edits.ts';

const wallOf = ({ one }: Target): Wall | null => (one?.list === 'walls' ? one.item : null);
const nextWall = (target: Target, end: 'from' | 'to'): Wall | null => {
  const wall = wallOf(target);
  const found = wall && wallsRunningOn(selectLevel(target.state), wall).find((each) => each.end === end);
  return found ? found.other : null;
};
const join = (end: 'from' | 'to'): Command => ({
  id: `join-${end}`,
  section: 'move',
  name: (target) => {
    const wall = wallOf(target);
    return `Join it at its ${wall ? wallEndNames(wall)[end] : end} end`;
  },
  when: (target) => nextWall(target, end) !== null,
  run: (target) => {
    const [wall, other] = [wallOf(target), nextWall(target, end)];
    if (wall && other) withLateEdits('walls', ({ joinWalls }) => joinWalls(wall.id, other.id));
  },
});

const openingHere = (kind: OpeningKind): Command => ({
  id: `${kind}-here`,
  section: 'here',
  name: `Put a ${kind} in here`,
  when: ({ one, at }) => one?.list === 'walls' && at !== null,
  run: ({ at }) => {
    if (at) createOpeningTool(kind).up(pressAt(at));
  },
});

/** Commands on one wall. */
export const WALL_COMMANDS: readonly Command[] = [
  openingHere('door'),
  openingHere('window'),
  openingHere('passage'),
  {
    id: 'split-here',
    section: 'here',
    name: 'Split the wall here',
    when: (target) => wallOf(target) !== null && target.at !== null,
    run: (target) => {
      const wall = wallOf(target);
      if (!wall || !target.at) return;
      const at = nearestParameter(target.at, wall.from, wall.to) * wallLength(wall);
      withLateEdits('walls', ({ splitWall }) => splitWall(wall.id, at));
    },
  },
  {
    id: 'split-by-press',
    section: 'move',
    name: 'Press where to split it',
    when: (target) => wallOf(target) !== null,
    run: ({ state, one }) => one && state.setTool({ kind: 'split-wall', id: one.item.id }),
  },
  join('from'),
  join('to'),
];
