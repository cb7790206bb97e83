import { type CSSProperties, type KeyboardEvent, useEffect, useRef, useState } from 'react';
import { roomAt } from '../../../geometry/check/room.ts';
import type { RoomUse, XY } from '../../../geometry/plan/model.ts';
import { pickUse } from '../../commands/go-to.ts';
import { SHEET_ID } from '../../editor/open-menu.ts';
import type { AppState } from '../../state/app-state.ts';
import { QUESTIONS } from '../../state/questions.ts';
import { selectModel } from '../../state/selectors.ts';
import { useAppStore } from '../../state/store.ts';
import { pannedBy, type SizePx, toScreen, type Viewport } from '../../state/viewport.ts';
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
/** The widest that the box is, px. */
const BOX_WIDTH_PX = 320;
/** Share of a narrow stage that is the room's. */
const ROOM_SHARE = 0.4;

/** Beside the room that is marked on the sheet: what it is used for, to be pressed. It goes on to the next room without a use. */
export function RoomUseBox({ at }: { readonly at: XY }) {
  const model = useAppStore(selectModel);
  const viewport = useAppStore((state) => state.viewport);
  const stage = useAppStore((state) => state.stageSize);
  const first = useRef<HTMLButtonElement>(null);
  const isAsked = roomAt(model, at)?.label === null;
  const moved = useRef<MovedView | null>(null);
  const [side] = useState(() => sideBeside(toScreen(viewport, at), stage));
  useEffect(() => () => moveBack(moved.current), []);
  useEffect(() => {
    if (isAsked) {
      first.current?.focus({ preventScroll: true });
      moved.current = bringIntoSight(at, side, moved.current);
    } else useAppStore.getState().askRoom(null);
  }, [isAsked, at, side]);
  if (!isAsked) return null;
  const leave = () => {
    useAppStore.getState().askRoom(null);
    document.getElementById(SHEET_ID)?.focus({ preventScroll: true });
  };
  return (
    <section
      className="room-use"
      style={placeAt(side, stage)}
      aria-label="What is this room used for?"
      onKeyDown={(event) => {
        if (event.key === 'Escape') leave();
        else if (!focusByKey(event)) return;
        event.preventDefault();
        event.stopPropagation();
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

/** Two uses stand side by side. */
const STEPS: Readonly<Record<string, number>> = { ArrowLeft: -1, ArrowRight: 1, ArrowUp: -2, ArrowDown: 2 };

/** An arrow goes to the next use, a letter to the next one that begins with it. Returns whether it was such a key. */
function focusByKey({ key, ctrlKey, altKey, metaKey, currentTarget }: KeyboardEvent<HTMLElement>): boolean {
  if (ctrlKey || altKey || metaKey) return false;
  const buttons = [...currentTarget.querySelectorAll('button')];
  const at = buttons.findIndex((each) => each === document.activeElement);
  const step = STEPS[key];
  if (step !== undefined) {
    buttons[Math.min(buttons.length - 1, Math.max(0, at + step))]?.focus();
    return true;
  }
  if (!/^[a-z]$/i.test(key)) return false;
  const after = [...buttons.slice(at + 1), ...buttons.slice(0, at + 1)];
  after.find(({ textContent }) => textContent.toLowerCase().startsWith(key.toLowerCase()))?.focus();
  return true;
}

type Side = 'left' | 'right';

/** The edge that is farther from the first room. There the box stays: the answer for one room is pressed where that for the last one was. */
const sideBeside = ([x]: XY, { width }: SizePx): Side => (x > width / 2 ? 'left' : 'right');

/** At one edge, on a narrow stage at the foot. */
function placeAt(side: Side, stage: SizePx): CSSProperties {
  if (isNarrow(stage))
    return { left: OFF_PX, right: OFF_PX, bottom: OFF_PX, maxHeight: stage.height * (1 - ROOM_SHARE) };
  return { [side]: OFF_PX, top: OFF_PX, maxHeight: stage.height - 2 * OFF_PX };
}

/** The view before the box moved it, and where to. */
interface MovedView {
  readonly from: Pick<AppState, 'viewport' | 'wholeInView'>;
  readonly to: Viewport;
}

/**
 * Moves the view where the box would lie over the room: on a narrow stage the room comes into its upper part, on a wide one into the middle of
 * what the box leaves free. Returns the view to go back to, null where none was moved.
 */
function bringIntoSight(at: XY, side: Side, before: MovedView | null): MovedView | null {
  const { stageSize, viewport, wholeInView, setViewport } = useAppStore.getState();
  const [dx, dy] = wayIntoSight(toScreen(viewport, at), side, stageSize);
  if (dx === 0 && dy === 0) return before;
  setViewport(pannedBy(viewport, dx, dy));
  const from = before?.to === viewport ? before.from : { viewport, wholeInView };
  return { from, to: useAppStore.getState().viewport };
}

function wayIntoSight([x, y]: XY, side: Side, stage: SizePx): XY {
  if (isNarrow(stage)) return [stage.width / 2 - x, (stage.height * ROOM_SHARE) / 2 - y];
  const free = stage.width - BOX_WIDTH_PX - 2 * OFF_PX;
  const start = side === 'left' ? stage.width - free : 0;
  return x >= start && x <= start + free ? [0, 0] : [start + free / 2 - x, 0];
}

/** Once no room is asked about, the view is the one before; a view that somebody has moved since stays. */
function moveBack(moved: MovedView | null): void {
  const { viewport, setViewport, fit: showWhole } = useAppStore.getState();
  if (!moved || viewport !== moved.to) return;
  if (moved.from.wholeInView) showWhole();
  else setViewport(moved.from.viewport);
}

const isNarrow = ({ width }: SizePx): boolean => width < 640;
