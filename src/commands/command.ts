import { roomAt } from '../../geometry/check/room.ts';
import type { Room } from '../../geometry/level/types.ts';
import type { XY } from '../../geometry/plan/model.ts';
import { type FoundItem, findItem } from '../state/plan-edits.ts';
import { selectLevel, selectModel } from '../state/selectors.ts';
import type { AppState } from '../state/store.ts';

/** What an act is done with. */
export interface ActPlace {
  readonly state: AppState;
  /** What is selected or was pressed; empty for bare floor or paper. */
  readonly found: readonly FoundItem[];
  /** The only one of `found`; null for none and for several. */
  readonly one: FoundItem | null;
  /** The spot that was pressed; null where none was. */
  readonly at: XY | null;
  /** The room that the spot lies in. */
  readonly room: Room | null;
}

/** The sections of the list of acts, in this order; their names are read out and shown where more than one act is in them. */
export const ACT_GROUPS = ['here', 'move', 'line', 'copy', 'select', 'hand', 'look', 'delete'] as const;
type ActGroup = (typeof ACT_GROUPS)[number];

interface ActKey {
  /** As the lists show it: "Ctrl + D". */
  readonly shown: string;
  /** `KeyboardEvent.key`, lower case. */
  readonly press: string;
  readonly also?: string;
  readonly ctrl?: true;
}

/** Something that can be done: what it is called, when, what it does, by which key. The rows of the one table. */
export interface Act {
  /** Never shown. */
  readonly id: string;
  readonly group: ActGroup;
  readonly name: string | ((place: ActPlace) => string);
  readonly applies: (place: ActPlace) => boolean;
  readonly run: (place: ActPlace) => void;
  readonly key?: ActKey;
  /** In the list of keys, where the name alone does not tell enough. */
  readonly does?: string;
  /** When it is a button in the panel of what is selected too. */
  readonly onPanel?: (place: ActPlace) => boolean;
  /** Can be done once more by the key for "again". */
  readonly repeats?: true;
}

export function placeOf(state: AppState, ids: readonly string[], at: XY | null): ActPlace {
  const level = selectLevel(state);
  const found = ids.map((id) => findItem(level, id)).filter((each) => each !== null);
  const [first = null] = found;
  const room = at ? roomAt(selectModel(state), at) : null;
  return { state, found, one: found.length === 1 ? first : null, at, room };
}

/** Whether the floor itself was pressed; a name that is written on it is in nobody's way. */
export function onFloor({ found, one, room, at }: ActPlace): boolean {
  return at !== null && room !== null && (found.length === 0 || one?.list === 'rooms');
}

export function nameOf({ name }: Act, place: ActPlace): string {
  return typeof name === 'string' ? name : name(place);
}

/** Whether a key press is this act's. */
export function isKeyOf({ key }: Act, event: KeyboardEvent): boolean {
  if (!key || event.altKey || (event.ctrlKey || event.metaKey) !== (key.ctrl ?? false)) return false;
  if (key.ctrl && event.shiftKey) return false;
  const pressed = event.key.toLowerCase();
  return pressed === key.press || pressed === key.also;
}
