import { nextFigure } from '../editor/lengths/figures.ts';
import { closeLength, openLength, useLengths } from '../editor/lengths/store.ts';
import type { Command } from './command.ts';
import { DIGITS } from './drawing-commands.ts';
import { isOnSheet } from './modes.ts';
import { plainKey, type Shortcut, withAny } from './shortcut.ts';

/** Any key but Shift, without Ctrl and Alt. */
const ANY_KEY: Shortcut = { shown: '', keys: null, ctrl: 'up', shift: 'either', alt: 'up' };

/** Commands on the lengths shown on the sheet. */
export const LENGTH_COMMANDS: readonly Command[] = [
  {
    id: 'type-length',
    name: 'Type a length on the plan',
    shortcuts: [plainKey('L')],
    modes: ['length', 'page'],
    run: (_, event) => {
      const subject = nextFigure(event?.shiftKey ? -1 : 1);
      if (subject) openLength(subject, true);
      return subject !== null;
    },
    help: [
      { keys: 'L', does: 'Type a length on the plan: about what is selected, or of the rooms; Tab goes to the next' },
    ],
  },
  {
    id: 'begin-length',
    name: 'Type the length that waits',
    shortcuts: [DIGITS],
    modes: ['length'],
    run: (_, event) => typeWaiting(event?.key ?? null),
    help: [],
  },
  {
    id: 'enter-length',
    name: 'Correct the length that waits',
    shortcuts: [{ ...withAny('Enter'), ctrl: 'up', alt: 'up' }],
    modes: ['length'],
    run: (_, event) => (isOnSheet(event?.target ?? null) ? typeWaiting(null) : false),
    help: [],
  },
  {
    id: 'leave-length',
    name: 'Leave the length that waits',
    shortcuts: [ANY_KEY],
    modes: ['length'],
    // Any other key means that the user does not type the length. The key is left to the next mode.
    run: () => {
      if (!useLengths.getState().open?.typing) closeLength();
      return false;
    },
    help: [],
  },
];

/** Opens the field of the length that waits. `first` is the first character in it; null keeps the present length. */
function typeWaiting(first: string | null): void {
  const { open } = useLengths.getState();
  if (!open) return;
  // More digits may be typed before the field is mounted.
  const typed = open.typing ? `${open.first ?? ''}${first ?? ''}` || null : first;
  useLengths.setState({ open: { ...open, typing: true, first: typed } });
}
