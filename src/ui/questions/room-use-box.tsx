import { type CSSProperties, useEffect, useRef } from 'react';
import { roomAt } from '../../../geometry/check/room.ts';
import type { RoomUse, XY } from '../../../geometry/plan/model.ts';
import { pickUse } from '../../commands/go-to.ts';
import { SHEET_ID } from '../../editor/open-menu.ts';
import { QUESTIONS } from '../../state/questions.ts';
import { selectModel } from '../../state/selectors.ts';
import { useAppStore } from '../../state/store.ts';
import { pannedBy, type SizePx, toScreen } from '../../state/viewport.ts';
import './room-use-box.css';

interface UseGroup {
  readonly name: string;
  readonly uses: readonly { readonly name: string; readonly use: RoomUse }[];
}

/** The uses of a room in the order and the groups in which they are asked for. */
const USES = QUESTIONS.find(({ id }) => id === 'used')?.answers ?? [];
const STARTS = [...USES.keys()].filter((i) => USES[i]?.group);
const GROUPS = STARTS.map((start, i): UseGroup => {
  const uses = USES.slice(start, STARTS[i + 1]).flatMap(({ name, tool }) =>
    tool.kind === 'room' ? [{ name, use: tool.use }] : [],
  );
  return { name: USES[start]?.group ?? '', uses };
});
const FIRST_USE = GROUPS[0]?.uses[0]?.use;

/** How far the box stands off the edge of the stage, px. */
const OFF_PX = 8;
/** Share of a narrow stage that is the room's. */
const ROOM_SHARE = 0.4;

/** Beside the room that is marked on the sheet: what it is used for, to be pressed. It goes on to the next room without a use. */
export function RoomUseBox({ at }: { readonly at: XY }) {
  const model = useAppStore(selectModel);
  const viewport = useAppStore((state) => state.viewport);
  const stage = useAppStore((state) => state.stageSize);
  const first = useRef<HTMLButtonElement>(null);
  const isAsked = roomAt(model, at)?.label === null;
  useEffect(() => {
    if (isAsked) {
      first.current?.focus({ preventScroll: true });
      bringAbove(at);
    } else useAppStore.getState().askRoom(null);
  }, [isAsked, at]);
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
      {GROUPS.map(({ name: group, uses }) => (
        <section key={group} aria-label={group}>
          <h3>{group}</h3>
          <ul>
            {uses.map(({ name, use }) => (
              <li key={use}>
                <button
                  ref={use === FIRST_USE ? first : undefined}
                  type="button"
                  className="button"
                  // The second press of a double one would name the next room too.
                  onClick={({ detail }) => detail < 2 && nameAndGoOn(use)}
                >
                  {name}
                </button>
              </li>
            ))}
          </ul>
        </section>
      ))}
      <button type="button" className="button button--bare" onClick={leave}>
        Not now
      </button>
    </section>
  );
}

/** Names the room that is asked about and asks about the next one without a use; with none left the plan has the keyboard. */
function nameAndGoOn(use: RoomUse): void {
  pickUse(use);
  const state = useAppStore.getState();
  const next = selectModel(state).rooms.find(({ label }) => label === null);
  if (next) state.askRoom(next.labelPoint);
  else document.getElementById(SHEET_ID)?.focus({ preventScroll: true });
}

/** Below the room on a narrow stage, else at the edge that is farther from its middle: the room stays in sight. */
function placeBeside([x]: XY, stage: SizePx): CSSProperties {
  if (isNarrow(stage))
    return { left: OFF_PX, right: OFF_PX, bottom: OFF_PX, maxHeight: stage.height * (1 - ROOM_SHARE) };
  const atLeft = x > stage.width / 2;
  return { [atLeft ? 'left' : 'right']: OFF_PX, top: OFF_PX, maxHeight: stage.height - 2 * OFF_PX };
}

/** On a narrow stage the room comes into its upper part, which the box leaves free. */
function bringAbove(at: XY): void {
  const { stageSize, viewport, setViewport } = useAppStore.getState();
  if (!isNarrow(stageSize)) return;
  const [x, y] = toScreen(viewport, at);
  setViewport(pannedBy(viewport, stageSize.width / 2 - x, (stageSize.height * ROOM_SHARE) / 2 - y));
}

const isNarrow = ({ width }: SizePx): boolean => width < 640;
