import type { Item } from '../../geometry/edit/index.ts';
import { movedItems, nextId, withoutItems } from '../../geometry/edit/index.ts';
import { prefixOf, uncheckedItemAdded, uncheckedItemPatched } from '../../geometry/edit/listed-items.ts';
import type { DocumentActions, GetState, SetState } from './app-state.ts';
import { refuseLocked } from './locked-detectors.ts';
import { freeSpot, newDetector } from './place-detector.ts';
import { recordsGone } from './records-gone.ts';
import { selectLevel } from './selectors.ts';

/** Offset of a copy to the right and down, mm: one foot. */
export const COPY_OFFSET = 304.8;

type ItemActions = Pick<DocumentActions, 'addItem' | 'updateItem' | 'deleteSelection' | 'nudge' | 'addDetector'>;

/** Edits of the items of the level in view, each one step of history. */
export function createItemActions(set: SetState, get: GetState): ItemActions {
  return {
    addItem: (list, item) => {
      const id = nextId(get().plan, prefixOf(list));
      const levelId = selectLevel(get()).id;
      // The list determines the type of the item.
      if (get().run((plan) => uncheckedItemAdded(plan, levelId, list, { ...item, id } as Item))) return '';
      set({ selection: [id] });
      return id;
    },
    updateItem: (id, patch) => {
      const refusal = 'at' in patch && refuseLocked(get(), [id]);
      if (refusal) return refusal;
      const levelId = selectLevel(get()).id;
      return get().run((plan) => uncheckedItemPatched(plan, levelId, id, patch));
    },
    deleteSelection: () => {
      const { selection } = get();
      if (selection.length === 0) return;
      const levelId = selectLevel(get()).id;
      const before = get().plan;
      get().run((plan) => withoutItems(plan, levelId, selection));
      set({ selection: [] });
      const gone = recordsGone(before, get().plan);
      if (gone) get().say(`${gone} Undo restores all of it.`);
    },
    nudge: (dx, dy) => {
      const { selection } = get();
      if (selection.length === 0) return '';
      const levelId = selectLevel(get()).id;
      return refuseLocked(get(), selection) || get().run((plan) => movedItems(plan, levelId, selection, dx, dy));
    },
    addDetector: (at) => {
      const state = get();
      return state.addItem('detectors', newDetector(state.plan, selectLevel(state), at ?? freeSpot(state)));
    },
  };
}
