import { hasLevelBelow, isGestureUnderWay } from '../state/selectors.ts';
import type { Command, Target } from './command.ts';
import { withAny } from './shortcut.ts';

const HELP = [{ keys: 'Page Up, Page Down', does: 'The level above, the level below' }];

/** Shows the level above or below. Does nothing during a gesture: an item that is being moved must stay on its level. */
const step =
  (way: 'above' | 'below') =>
  ({ state }: Target): void => {
    if (!isGestureUnderWay(state)) state.stepLevel(way);
  };

/** Commands on the levels of the plan. */
export const LEVEL_COMMANDS: readonly Command[] = [
  {
    id: 'level-above',
    name: 'The level above',
    shortcuts: [withAny('Page Up', 'pageup')],
    modes: ['sheet'],
    run: step('above'),
    help: HELP,
  },
  {
    id: 'level-below',
    name: 'The level below',
    shortcuts: [withAny('Page Down', 'pagedown')],
    modes: ['sheet'],
    run: step('below'),
    help: HELP,
  },
  { id: 'add-level', name: 'Add level', run: ({ state }) => state.addLevel('above') },
  {
    id: 'show-level-below',
    name: 'Level below',
    when: ({ state }) => hasLevelBelow(state),
    run: ({ state }) => state.setShowBelow(!state.showBelow),
  },
];
