import { roomAt } from '../../geometry/check/room.ts';
import { findItem, type ListedItem } from '../../geometry/edit/listed-items.ts';
import type { Room } from '../../geometry/level/types.ts';
import type { XY } from '../../geometry/plan/model.ts';
import type { AppState } from '../state/app-state.ts';
import { selectLevel, selectModel } from '../state/selectors.ts';
import type { Mode } from './modes.ts';
import type { Shortcut } from './shortcut.ts';

/** The items and the point that a command is carried out on. */
export interface Target {
  readonly state: AppState;
  /** The items that are selected or were pressed; empty for bare floor or paper. */
  readonly found: readonly ListedItem[];
  /** The only one of `found`; null for none and for several. */
  readonly one: ListedItem | null;
  /** The point of the plan that was pressed, mm; null if none was. */
  readonly at: XY | null;
  /** The room that contains the point. */
  readonly room: Room | null;
}

/** The sections of the menu, in this order. */
export const MENU_SECTIONS = ['here', 'move', 'line', 'copy', 'select', 'tool', 'look', 'delete'] as const;
type MenuSection = (typeof MENU_SECTIONS)[number];

/** A row of the list of keys. */
export interface KeyRow {
  readonly keys: string;
  readonly does: string;
}

/** A row of the table of commands: a name, when it applies, its keys, and what it does. */
export interface Command {
  readonly id: string;
  /** Name on the menu and buttons. */
  readonly name: string | ((target: Target) => string);
  /** Its section of the menu; left out for a command that no menu lists. */
  readonly section?: MenuSection;
  readonly shortcuts?: readonly Shortcut[];
  /** Modes in which its shortcuts apply; `page` if left out. */
  readonly modes?: readonly Mode[];
  /** The browser reports its shortcut by a special event (see `clipboard-keys.ts`): key presses are ignored. */
  readonly byBrowser?: true;
  /** Whether it applies; it always does if left out. */
  readonly when?: (target: Target) => boolean;
  /** Carries it out. `event` is given for a shortcut; the result false leaves the key press to the next mode. */
  readonly run: (target: Target, event?: KeyboardEvent) => unknown;
  /** Called when the key is released or the page loses the keyboard focus. */
  readonly release?: () => void;
  /** Its rows in the list of keys; made from its shortcuts and name if left out. Commands may share a row. */
  readonly help?: readonly KeyRow[];
  /** Whether the panel of the selection shows it as a button too. */
  readonly inPanel?: (target: Target) => boolean;
  /** The command "again" can repeat it. */
  readonly repeats?: true;
}

/** Returns the target for these items of the level in view and a point `at`, mm; ids that are not on the level are left out. */
export function targetOf(state: AppState, ids: readonly string[], at: XY | null): Target {
  const level = selectLevel(state);
  const found = ids.map((id) => findItem(level, id)).filter((each) => each !== null);
  const [first = null] = found;
  const room = at ? roomAt(selectModel(state), at) : null;
  return { state, found, one: found.length === 1 ? first : null, at, room };
}

/** Returns whether floor was pressed; a room's name counts as floor. */
export function isOnFloor({ found, one, room, at }: Target): boolean {
  return at !== null && room !== null && (found.length === 0 || one?.list === 'rooms');
}

export function nameOf({ name }: Command, target: Target): string {
  return typeof name === 'string' ? name : name(target);
}

export function applies({ when }: Command, target: Target): boolean {
  return when?.(target) ?? true;
}
