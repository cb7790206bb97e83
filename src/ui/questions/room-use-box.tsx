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

/** The uses of a room in the order and the groups in which they are shown. */
const USES = QUESTIONS.find(({ id }) => id === 'used')?.answers ?? [];
const STARTS = [...USES.keys()].filter((i) => USES[i]?.group);
const GROUPS = STARTS.map((start, i): UseGroup => {
  const uses = USES.slice(start, STARTS[i + 1]).flatMap(({ name, tool }) =>
    tool.kind === 'room' ? [{ name, use: tool.use }] : [],
  );
  return { name: USES[start]?.group ?? '', uses };
});
const FIRST_USE = GROUPS[0]?.uses[0]?.use;

/** Distance of the box from the edges of the stage, px. */
const OFF_PX = 8;
/** Maximum width of the box, px. */
const BOX_WIDTH_PX = 320;
/** Share of the height of a narrow stage that stays free for the room. */
const ROOM_SHARE = 0.4;

/** Asks for the use of the marked room, in a box beside it, and then for that of the next room without a use. */
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
                  // The second press of a double press would name the next room too.
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

/** Names the room and asks about the next one without a use; if there is none, focuses the plan. */
function nameAndGoOn(use: RoomUse): void {
  pickUse(use);
  const state = useAppStore.getState();
  const next = selectModel(state).rooms.find(({ label }) => label === null);
  if (next) state.askRoom(next.labelPoint);
  else document.getElementById(SHEET_ID)?.focus({ preventScroll: true });
}

/** Steps of the arrow keys: two uses are side by side. */
const STEPS: Readonly<Record<string, number>> = { ArrowLeft: -1, ArrowRight: 1, ArrowUp: -2, ArrowDown: 2 };

/** Moves the focus by an arrow to the next use, by a letter to the next one that begins with it. Returns whether it was such a key. */
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

/** Returns the edge that is farther from the first room. The box stays there, so that the answers for all rooms are in the same place. */
const sideBeside = ([x]: XY, { width }: SizePx): Side => (x > width / 2 ? 'left' : 'right');

/** Returns the position of the box: at one edge, on a narrow stage at the bottom. */
function placeAt(side: Side, stage: SizePx): CSSProperties {
  if (isNarrow(stage))
    return { left: OFF_PX, right: OFF_PX, bottom: OFF_PX, maxHeight: stage.height * (1 - ROOM_SHARE) };
  return { [side]: OFF_PX, top: OFF_PX, maxHeight: stage.height - 2 * OFF_PX };
}

/** The view before the box moved it, and after. */
interface MovedView {
  readonly from: Pick<AppState, 'viewport' | 'wholeInView'>;
  readonly to: Viewport;
}

/**
 * Moves the view if the box would cover the room: on a narrow stage the room moves into the upper part, on a wide one into the middle of the
 * free part. Returns the view to restore; null if it was never moved.
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

/** Restores the view, unless the user has moved it since. */
function moveBack(moved: MovedView | null): void {
  const { viewport, setViewport, fit: showWhole } = useAppStore.getState();
  if (!moved || viewport !== moved.to) return;
  if (moved.from.wholeInView) showWhole();
  else setViewport(moved.from.viewport);
}

const isNarrow = ({ width }: SizePx): boolean => width < 640;
