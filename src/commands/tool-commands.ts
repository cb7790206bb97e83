import { moveCross, pressAtCross } from '../editor/input/keyboard-cross.ts';
import { nudger } from '../editor/input/nudger.ts';
import { ARROWS, panByArrow } from '../editor/input/sheet-keys.ts';
import { openMenuByKey } from '../editor/open-menu.ts';
import { useSketch } from '../editor/overlay/sketch.ts';
import { activeTool } from '../editor/tools/active-tool.ts';
import { useAppStore } from '../state/store.ts';
import { SELECT_TOOL } from '../state/tool.ts';
import type { Command, Target } from './command.ts';
import { ENTER_HELP, toTool } from './drawing-commands.ts';
import { plainKey, type Shortcut, withAny } from './shortcut.ts';

const ARROW_KEYS: Shortcut = withAny('Arrows', ...Object.keys(ARROWS).map((key) => key.toLowerCase()));
const hasTool = ({ state }: Target): boolean => state.tool.kind !== 'select';

/** Commands on the active tool and on the crosshair of the keyboard. */
export const TOOL_COMMANDS: readonly Command[] = [
  {
    id: 'arrows',
    name: 'Move the selection, the crosshair or the view',
    shortcuts: [ARROW_KEYS],
    modes: ['sheet'],
    run: (_, event) => event && pressArrow(event),
    release: nudger.settle,
    help: [
      {
        keys: 'Arrows',
        does: 'Move what is selected by 1 in (1 cm), else the crosshair, which stops at walls; without a crosshair, the view',
      },
      { keys: 'Shift + arrows', does: 'By 1/8 in (1 mm)' },
      { keys: 'Ctrl + arrows', does: 'By 1 ft (10 cm)' },
    ],
  },
  {
    id: 'arrows-of-tool',
    name: 'Move what the tool moves',
    shortcuts: [ARROW_KEYS],
    modes: ['tool'],
    run: toTool,
    release: () => activeTool()?.keyUp?.(),
    help: [],
  },
  {
    id: 'press-at-cross',
    name: 'Press at the crosshair',
    shortcuts: [withAny('Enter')],
    modes: ['sheet'],
    run: (_, event) => pressAtCross(event?.shiftKey ?? false),
    help: ENTER_HELP,
  },
  {
    id: 'menu',
    name: 'More…',
    shortcuts: [{ ...withAny('Shift + F10', 'f10'), shift: 'down' }, withAny('Menu key', 'contextmenu')],
    modes: ['sheet'],
    run: () => {
      nudger.settle();
      openMenuByKey();
    },
    help: [{ keys: 'Shift + F10, Menu key', does: 'All commands for the selection, or at the crosshair' }],
  },
  {
    id: 'turn-tool',
    name: 'Turn the item of the tool by a right angle',
    shortcuts: [{ ...plainKey('R'), alt: 'either' }],
    modes: ['tool'],
    run: toTool,
    help: [{ keys: 'R', does: 'Turn the item of the tool by a right angle' }],
  },
  {
    id: 'give-up',
    name: 'Cancel',
    shortcuts: [withAny('Escape')],
    run: giveUp,
    help: [{ keys: 'Escape', does: 'Cancel the current action; put the tool back; select nothing' }],
  },
  {
    id: 'close-tracing-frame',
    name: 'The picture is in place',
    shortcuts: [withAny('Escape')],
    modes: ['tracing-frame'],
    run: (_, event) => {
      useAppStore.getState().setTracingFrameOpen(false);
      return event === undefined;
    },
    help: [],
  },
  {
    id: 'cancel-gesture',
    name: 'Cancel the gesture',
    shortcuts: [{ ...plainKey('Ctrl + Z', 'z'), ctrl: 'down' }],
    modes: ['gesture'],
    // During a gesture, undo cancels the gesture.
    run: () => {
      activeTool()?.cancel();
    },
    help: [],
  },
  {
    id: 'put-back',
    section: 'tool',
    name: 'Put the tool back',
    when: hasTool,
    run: ({ state }) => state.setTool(SELECT_TOOL),
  },
  {
    id: 'keep',
    section: 'tool',
    name: ({ state }) => (state.keepTool ? 'Stop keeping the tool' : 'Keep the tool'),
    shortcuts: [plainKey('K')],
    help: [{ keys: 'K', does: 'Keep the tool: each press places one' }],
    when: hasTool,
    run: ({ state }) => state.setKeepTool(!state.keepTool),
  },
];

function pressArrow(event: KeyboardEvent): void {
  const arrow = ARROWS[event.key];
  if (!arrow) return;
  const { tool } = useAppStore.getState();
  if (tool.kind !== 'select') moveCross(arrow, event);
  else if (nudger.move(arrow, event)) return;
  else if (useSketch.getState().cross) moveCross(arrow, event);
  else panByArrow(arrow, event);
}

function giveUp({ state }: Target): void {
  nudger.settle();
  if (activeTool()?.cancel()) return;
  if (useAppStore.getState().tool.kind !== 'select') state.setTool(SELECT_TOOL);
  else state.say('');
}
