import { spaceBar } from '../editor/input/sheet-keys.ts';
import { pannedBy, toScreen } from '../state/viewport.ts';
import type { Command, Target } from './command.ts';
import { plainKey, type Shortcut, withAny } from './shortcut.ts';

/** Zoom factor of a press on "larger" or "smaller". */
const ZOOM_STEP = 1.25;
const ZOOM_HELP = [{ keys: '+ − 0', does: 'Larger, smaller, the whole level' }];
/** Allows Alt to be held, which turns snapping off. */
const withAlt = (shortcut: Shortcut): Shortcut => ({ ...shortcut, alt: 'either' });

/** Commands on the view of the sheet. */
export const VIEW_COMMANDS: readonly Command[] = [
  {
    id: 'pan-by-drag',
    name: 'Move the view',
    shortcuts: [withAny('Space', ' ')],
    modes: ['sheet'],
    run: spaceBar.press,
    release: spaceBar.release,
    help: [{ keys: 'Space + drag', does: 'Move the view' }],
  },
  {
    id: 'larger',
    name: 'Larger',
    shortcuts: [withAlt(plainKey('+', '+', '='))],
    run: ({ state }) => state.zoomBy(ZOOM_STEP),
    help: ZOOM_HELP,
  },
  {
    id: 'smaller',
    name: 'Smaller',
    shortcuts: [withAlt(plainKey('−', '-'))],
    run: ({ state }) => state.zoomBy(1 / ZOOM_STEP),
    help: ZOOM_HELP,
  },
  {
    id: 'whole-level',
    name: 'Whole level',
    shortcuts: [withAlt(plainKey('0'))],
    run: ({ state }) => state.fit(),
    help: ZOOM_HELP,
  },
  { id: 'snap', name: 'Snap', run: ({ state }) => state.setSnap(!state.snap) },
  {
    id: 'to-middle',
    section: 'look',
    name: 'Center this spot',
    when: ({ at }) => at !== null,
    run: bringToMiddle,
  },
  {
    id: 'pan-by-press',
    section: 'look',
    name: 'Center the view by a press',
    when: ({ found }) => found.length === 0,
    run: ({ state }) => state.setTool({ kind: 'center' }),
  },
];

function bringToMiddle({ state, at }: Target): void {
  if (!at) return;
  const { viewport, stageSize } = state;
  const [x, y] = toScreen(viewport, at);
  state.setViewport(pannedBy(viewport, stageSize.width / 2 - x, stageSize.height / 2 - y));
}
