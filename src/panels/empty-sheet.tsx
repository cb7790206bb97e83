import { useAppStore } from '../state/store.ts';
import { act } from './acts.ts';
import { PictureButton } from './picture-button.tsx';
import { showDialog } from './ui.ts';
import { useLevel } from './use-level.ts';
import './empty-sheet.css';

/** What to do first. It lies on the bare sheet and goes as soon as something is in hand or drawn. */
export function EmptySheet() {
  const level = useLevel();
  const inHand = useAppStore((state) => state.tool.kind !== 'select' || state.draft !== null);
  const bare =
    !level.tracing &&
    [level.walls, level.rooms, level.fixtures, level.objects, level.detectors].every((items) => items.length === 0);
  if (!bare || inHand) return null;
  return (
    <section className="empty" aria-label="Where to begin">
      <h2>Begin with the room that you stand in.</h2>
      <p>Draw its walls, walk round and put in what you see, then set a detector where it might sit.</p>
      <div className="buttons">
        <button
          type="button"
          className="button button--main"
          onClick={() => act({ kind: 'tool', label: '', tool: { kind: 'room-box' } })}
        >
          Four walls in one drag
        </button>
        <button
          type="button"
          className="button"
          onClick={() => act({ kind: 'tool', label: '', tool: { kind: 'wall' } })}
        >
          Wall after wall
        </button>
        <PictureButton className="button" words="Draw over a photo" />
        <button type="button" className="button" onClick={() => showDialog({ kind: 'samples' })}>
          Look at a sample
        </button>
      </div>
      <p className="small soft">Or drop a plan file or a picture anywhere on this page.</p>
    </section>
  );
}
