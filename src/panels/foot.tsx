import { openMenuByKey } from '../canvas/open-menu.ts';
import { useAppStore } from '../state/store.ts';
import { useLevel } from './use-level.ts';
import './foot.css';

/** Under the sheet: which level is in view, and how it is looked at. */
export function Foot() {
  return (
    <div className="foot">
      <Levels />
      <View />
    </div>
  );
}

function Levels() {
  const levels = useAppStore((state) => state.plan.levels);
  const shown = useLevel();
  const { setLevel, addLevel } = useAppStore.getState();
  const sorted = [...levels].sort((a, b) => a.order - b.order);
  return (
    <fieldset className="foot__group" aria-label="Levels, lowest first">
      {sorted.map(({ id, name }) => (
        <button key={id} type="button" className="button" aria-pressed={id === shown.id} onClick={() => setLevel(id)}>
          {name.trim() || 'No name'}
        </button>
      ))}
      <button type="button" className="button button--bare" onClick={addLevel}>
        Add level
      </button>
    </fieldset>
  );
}

function View() {
  const snap = useAppStore((state) => state.snap);
  const { setSnap, zoomBy, fit } = useAppStore.getState();
  return (
    <fieldset className="foot__group foot__view" aria-label="View">
      <button type="button" className="button" aria-haspopup="menu" onClick={openMenuByKey}>
        More…
      </button>
      <button type="button" className="button" aria-pressed={snap} onClick={() => setSnap(!snap)}>
        Snap
      </button>
      <button type="button" className="button" aria-label="Smaller" onClick={() => zoomBy(1 / 1.25)}>
        −
      </button>
      <button type="button" className="button" aria-label="Larger" onClick={() => zoomBy(1.25)}>
        +
      </button>
      <button type="button" className="button" onClick={fit}>
        Whole level
      </button>
    </fieldset>
  );
}
