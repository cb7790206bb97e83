import { useEffect, useRef } from 'react';
import { roomAt } from '../../../geometry/check/room.ts';
import type { XY } from '../../../geometry/plan/model.ts';
import { pickUse } from '../../commands/go-to.ts';
import { SHEET_ID } from '../../editor/open-menu.ts';
import { QUESTIONS } from '../../state/questions.ts';
import { selectModel } from '../../state/selectors.ts';
import { useAppStore } from '../../state/store.ts';
import { type SizePx, toScreen } from '../../state/viewport.ts';
import './room-use-box.css';

const USES = QUESTIONS.find(({ id }) => id === 'used')?.answers ?? [];
/** As large as the box may get, and how far it stands off the middle of the room, px. */
const BOX_PX = { width: 320, height: 440, off: 24 } as const;

/** Beside the room that is marked on the sheet: what it is used for, to be pressed. */
export function RoomUseBox({ at }: { readonly at: XY }) {
  const model = useAppStore(selectModel);
  const viewport = useAppStore((state) => state.viewport);
  const stage = useAppStore((state) => state.stageSize);
  const first = useRef<HTMLButtonElement>(null);
  const isAsked = roomAt(model, at)?.label === null;
  useEffect(() => {
    if (isAsked) first.current?.focus({ preventScroll: true });
    else useAppStore.getState().askRoom(null);
  }, [isAsked]);
  if (!isAsked) return null;
  const leave = () => {
    useAppStore.getState().askRoom(null);
    document.getElementById(SHEET_ID)?.focus({ preventScroll: true });
  };
  return (
    <section
      className="room-use"
      style={placeBeside(toScreen(viewport, at), stage)}
      aria-label="What is this room used for?"
      onKeyDown={(event) => {
        if (event.key !== 'Escape') return;
        event.stopPropagation();
        leave();
      }}
    >
      <h2>What is this room used for?</h2>
      <ul>
        {USES.map(({ name, tool, group }, index) => (
          <UseRow key={name} group={group}>
            <button
              ref={index === 0 ? first : undefined}
              type="button"
              className="button"
              onClick={() => {
                if (tool.kind === 'room') pickUse(tool.use);
                document.getElementById(SHEET_ID)?.focus({ preventScroll: true });
              }}
            >
              {name}
            </button>
          </UseRow>
        ))}
      </ul>
      <button type="button" className="button button--bare" onClick={leave}>
        Not now
      </button>
    </section>
  );
}

function UseRow({ group, children }: { readonly group: string; readonly children: React.ReactNode }) {
  return (
    <>
      {group && (
        <li className="room-use__group" role="presentation">
          {group}
        </li>
      )}
      <li>{children}</li>
    </>
  );
}

/** Right of the middle of the room, left of it where it would leave the stage: the middle stays in sight. */
function placeBeside(
  [x, y]: XY,
  stage: SizePx,
): { readonly left: number; readonly top: number; readonly maxHeight: number } {
  const { width, off } = BOX_PX;
  const height = Math.min(BOX_PX.height, stage.height - 16);
  const right = x + off + width <= stage.width - 8;
  const left = right ? x + off : Math.max(8, x - off - width);
  const top = Math.min(Math.max(8, y - height / 2), Math.max(8, stage.height - height - 8));
  return { left, top, maxHeight: stage.height - 16 };
}
