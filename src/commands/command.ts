import { roomAt } from '../../geometry/check/room.ts';
import { findItem, type ListedItem } from '../../geometry/edit/listed-items.ts';
import type { Room } from '../../geometry/level/types.ts';
import type { XY } from '../../geometry/plan/model.ts';
import type { AppState } from '../state/app-state.ts';
import { selectLevel, selectModel } from '../state/selectors.ts';
import type { Mode } from './modes.ts';
import type { Shortcut } from './shortcut.ts';

/** What a command is carried out on. */
export interface Target {
  readonly state: AppState;
  /** What is selected or was pressed; empty for bare floor or paper. */
  readonly found: readonly ListedItem[];
  /** The only one of `found`; null for none and for several. */
  readonly one: ListedItem | null;
  /** The point of the plan that was pressed, mm; null where none was. */
  readonly at: XY | null;
  /** The room that the point lies in. */
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

/** Something that can be done: what it is called, when, by which keys, and what it does. A row of the one table. */
export interface Command {
  readonly id: string;
  /** As the menu and buttons show it. */
  readonly name: string | ((target: Target) => string);
  /** Where the menu lists it; left out for a command that no menu lists. */
  readonly section?: MenuSection;
  readonly shortcuts?: readonly Shortcut[];
  /** Where its shortcuts count; on the page if left out. */
  readonly modes?: readonly Mode[];
  /** The browser tells of its shortcut by an event of its own (see `clipboard-keys.ts`): key presses are left alone. */
  readonly byBrowser?: true;
  /** Whether it applies; it always does if left out. */
  readonly when?: (target: Target) => boolean;
  /** Carries it out. The event is there for a shortcut; false leaves the key press to the next mode. */
  readonly run: (target: Target, event?: KeyboardEvent) => unknown;
  /** The key was let go, or the page lost the keyboard. */
  readonly release?: () => void;
  /** Its rows in the list of keys; its shortcuts and name if left out. Commands may share a row. */
  readonly help?: readonly KeyRow[];
  /** When it is a button in the panel of what is selected too. */
  readonly inPanel?: (target: Target) => boolean;
  /** Can be done once more by the command "again". */
  readonly repeats?: true;
}

/** The target for these items of the level in view; ids that are not there are left out. */
export function targetOf(state: AppState, ids: readonly string[], at: XY | null): Target {
  const level = selectLevel(state);
  const found = ids.map((id) => findItem(level, id)).filter((each) => each !== null);
  const [first = null] = found;
  const room = at ? roomAt(selectModel(state), at) : null;
  return { state, found, one: found.length === 1 ? first : null, at, room };
}

/** Whether the floor itself was pressed; a room's name that is written on it counts as floor. */
export function isOnFloor({ found, one, room, at }: Target): boolean {
  return at !== null && room !== null && (found.length === 0 || one?.list === 'rooms');
}

export function nameOf({ name }: Command, target: Target): string {
  return typeof name === 'string' ? name : name(target);
}

export function applies({ when }: Command, target: Target): boolean {
  return when?.(target) ?? true;
}
