import { nameOf, placeOf } from '../../commands/command.ts';
import { doAct } from '../../commands/run-command.ts';
import { ACTS } from '../../commands/table.ts';
import { openMenuByKey } from '../../editor/open-menu.ts';
import { useAppStore } from '../../state/store.ts';

/** The acts that one reaches for most, as buttons; the last button lists them all. */
export function ActButtons({ ids }: { readonly ids: readonly string[] }) {
  const place = placeOf(useAppStore.getState(), ids, null);
  return (
    <div className="buttons">
      {ACTS.filter((act) => act.onPanel?.(place) && act.applies(place)).map((act) => (
        <button key={act.id} type="button" className="button" onClick={() => doAct(act, ids, null)}>
          {nameOf(act, place)}
        </button>
      ))}
      <button type="button" className="button" aria-haspopup="menu" onClick={openMenuByKey}>
        More…
      </button>
    </div>
  );
}
