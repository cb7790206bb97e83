import { activeTool } from '../editor/tools/active-tool.ts';
import { closeChainAsItIs, spreadChain } from '../state/close-wall-chain.ts';
import type { Command, Target } from './command.ts';
import { plainKey, type Shortcut, withAny } from './shortcut.ts';

/** Keys that can begin a length. */
export const DIGITS: Shortcut = plainKey('Digits', '0', '1', '2', '3', '4', '5', '6', '7', '8', '9', '.');
export const ENTER_HELP = [
  { keys: 'Enter', does: 'Place at the crosshair, or select what is there; end a run of walls' },
];

/** Passes the key to the active tool. Returns whether the tool used it. */
export const toTool = (_: Target, event?: KeyboardEvent): boolean => (event && activeTool()?.key?.(event)) ?? false;

/** Commands on the run of walls that is being drawn. */
export const DRAWING_COMMANDS: readonly Command[] = [
  {
    id: 'drawing-length',
    name: 'Type the length of the wall',
    shortcuts: [DIGITS],
    modes: ['drawing'],
    run: toTool,
    help: [
      {
        keys: 'Digits',
        does: 'While a wall is drawn: type its length, then Enter; an arrow before it shows the direction. After an item is placed: its distance from the walls',
      },
    ],
  },
  {
    id: 'drawing-turn',
    name: 'Type the turn of the wall',
    shortcuts: [plainKey('<')],
    modes: ['drawing'],
    run: toTool,
    help: [{ keys: '<', does: 'While a wall is drawn: type how far it turns off, in degrees' }],
  },
  {
    id: 'close-room',
    name: 'Close the room',
    shortcuts: [plainKey('C')],
    modes: ['drawing'],
    run: toTool,
    help: [{ keys: 'C', does: 'While walls are drawn: close the room' }],
  },
  {
    id: 'spread',
    name: 'Spread it',
    shortcuts: [plainKey('S')],
    modes: ['drawing'],
    run: (target, event) => (event ? toTool(target, event) : spreadChain()),
    help: [{ keys: 'S', does: 'Where the walls miss their start: spread what is missing over them' }],
  },
  { id: 'close-as-it-is', name: 'Close as it is', run: closeChainAsItIs },
  {
    id: 'drawing-back',
    name: 'Undo the last corner',
    shortcuts: [plainKey('Backspace')],
    modes: ['drawing'],
    run: toTool,
    help: [{ keys: 'Backspace', does: 'While a wall is drawn: undo the last corner' }],
  },
  {
    id: 'end-walls',
    name: 'End here',
    shortcuts: [{ ...withAny('Enter'), ctrl: 'up', alt: 'up' }],
    modes: ['drawing'],
    run: (target, event) => (event ? toTool(target, event) : target.state.endChain()),
    help: ENTER_HELP,
  },
];
