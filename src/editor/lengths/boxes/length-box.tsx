import { type KeyboardEvent, type RefObject, useEffect, useRef, useState } from 'react';
import { type LengthUnit, parseLength } from '../../../../geometry/units/index.ts';
import { parseTurn } from '../../../../geometry/units/parse-turn.ts';
import { useAppStore } from '../../../state/store.ts';
import { toScreen } from '../../../state/viewport.ts';
import { keepFocusOfTap } from '../../input/keep-focus.ts';
import { useSketch } from '../../overlay/sketch.ts';
import type { ToolController } from '../../tools/tool-controller.ts';
import { TURN_KEY } from '../../tools/wall-tool.ts';
import { useLengths } from '../store.ts';
import { BoxActions } from './box-actions.tsx';
import { BoxField } from './box-field.tsx';
import { type BoxPlace, placeBesideCorner } from './box-place.ts';
import { ScaleBox } from './scale-box.tsx';
import { keepTapedBy, TapedByChoice } from './taped-by-choice.tsx';
import { ThicknessField } from './thickness-field.tsx';
import { useBoxHeight } from './use-box-height.ts';
import { type ToolLength, useToolLength } from './use-tool-length.ts';
import './length-box.css';

interface Props {
  readonly controller: () => ToolController;
  readonly onDone: () => void;
}

/** A small field beside the pointer: the length of the wall that is being drawn, as a tape reads it. Enter sets it. */
export function LengthBox({ controller, onDone }: Props) {
  const typed = useSketch((sketch) => sketch.typed);
  const hasWall = useAppStore(({ chain }) => chain.corners.length > 1);
  const byFinger = useSketch((sketch) => sketch.touch);
  const asksScale = useAppStore(({ tool }) => tool.kind === 'tracing');
  useOpenedForFinger();
  if (typed === null && byFinger && hasWall) {
    return (
      <button type="button" className="button length-opener" onClick={openForFinger}>
        Type the length of this wall
      </button>
    );
  }
  if (typed === null) return null;
  if (asksScale) return <ScaleBox controller={controller} onDone={onDone} />;
  return <WallBox first={typed} controller={controller} onDone={onDone} />;
}

function openForFinger(): void {
  useLengths.setState({ fingerTypes: true });
  useSketch.setState({ typed: '' });
}

/**
 * Opens the box for each wall that is drawn by finger, as long as the lengths are typed. Drawing a wall without typing its length ends
 * that.
 */
function useOpenedForFinger(): void {
  const corners = useAppStore(({ chain }) => chain.corners.length);
  const before = useRef(0);
  useEffect(() => {
    const grew = corners > Math.max(1, before.current);
    before.current = corners;
    const { touch, typed } = useSketch.getState();
    if (!grew || !touch || !useLengths.getState().fingerTypes) return;
    if (typed === '') useLengths.setState({ fingerTypes: false });
    useSketch.setState({ typed: typed === null ? '' : null });
  }, [corners]);
}

/** The fields of length and turn of the next wall. */
function WallBox({ first, controller, onDone }: Props & { readonly first: string }) {
  const unit = useAppStore((state) => state.plan.display.length);
  const field = useRef<HTMLInputElement>(null);
  const turnField = useRef<HTMLInputElement>(null);
  const { text, refusal, setText, clearRefusal, apply } = useToolLength(controller, first);
  const turn = useSketch((sketch) => sketch.turn) ?? '';
  const [box, height] = useBoxHeight<HTMLDivElement>(330);
  const place = usePlace(height);
  const hasBefore = useHasWallBefore();
  const shown = useSketch((sketch) => sketch.nextCorner);
  // Removes "Show the direction first" once a direction is shown.
  // biome-ignore lint/correctness/useExhaustiveDependencies: only when the next corner is another one
  useEffect(clearRefusal, [shown]);
  const [thicknessRefusal, setThickness] = useState('');
  useFocusOnOpen(controller, field, turnField);

  const { cancel, set, onKey, show } = wallKeys({
    controller,
    onDone,
    field,
    turnField,
    text,
    turn,
    apply,
    clearRefusal,
  });
  const shared = { statusId: STATUS_ID, onKey };
  return (
    <div className="length-box" style={place} ref={box}>
      <BoxField
        {...shared}
        label="Length"
        field={field}
        value={text}
        isInvalid={refusal !== ''}
        onType={(typed) => {
          setText(typed);
          show({ typed });
        }}
      />
      <BoxField
        {...shared}
        label="Turns by"
        isTurn
        field={turnField}
        value={turn}
        placeholder="as shown"
        onType={(typed) => show({ turn: typed })}
      />
      <ThicknessField statusId={STATUS_ID} onDone={() => field.current?.focus()} onRefusal={setThickness} />
      <TapedByChoice
        onChoice={() => {
          clearRefusal();
          controller().typing?.();
          field.current?.focus();
        }}
      />
      <BoxActions
        statusId={STATUS_ID}
        status={refusal || thicknessRefusal || echo(text, turn, unit, hasBefore)}
        field={field}
        onSet={set}
        onCancel={cancel}
      />
    </div>
  );
}

interface WallKeys extends Props, Pick<ToolLength, 'text' | 'apply' | 'clearRefusal'> {
  readonly field: RefObject<HTMLInputElement | null>;
  readonly turnField: RefObject<HTMLInputElement | null>;
  readonly turn: string;
}

/** Returns the handlers of the keys and buttons of the box. */
function wallKeys({ controller, onDone, field, turnField, text, turn, apply, clearRefusal }: WallKeys) {
  const close = () => {
    useSketch.setState({ typed: null, turn: null });
    controller().typing?.();
    onDone();
  };
  const cancel = () => {
    useLengths.setState({ fingerTypes: false });
    close();
  };
  const set = () => {
    if (text.trim() === '' && turn && parseTurn(turn).ok) field.current?.focus();
    else if (apply()) {
      keepTapedBy();
      close();
    }
  };
  const onKey = ({ key, currentTarget }: KeyboardEvent<HTMLInputElement>) => {
    if (key === 'Enter') set();
    else if (key === 'Escape') cancel();
    else if (key === TURN_KEY) (currentTarget === field.current ? turnField : field).current?.focus();
    else return false;
    return true;
  };
  const show = (change: { readonly typed?: string; readonly turn?: string }) => {
    clearRefusal();
    useSketch.setState(change);
    controller().typing?.();
  };
  return { cancel, set, onKey, show };
}

const STATUS_ID = 'length-box-echo';

/** Places the box beside the corner that the wall starts from, where it stays while the pointer shows the direction. */
function usePlace(height: number): BoxPlace {
  const corner = useAppStore(({ chain }) => chain.corners.at(-1));
  const pointer = useSketch((sketch) => sketch.pointer);
  const viewport = useAppStore((state) => state.viewport);
  const stage = useAppStore((state) => state.stageSize);
  const at = corner ?? pointer;
  return placeBesideCorner(at ? toScreen(viewport, at) : [0, 0], stage, height);
}

/** Returns whether there is a wall before the one whose length is typed; by finger that is the last wall that was drawn. */
function useHasWallBefore(): boolean {
  const walls = useAppStore(({ chain }) => chain.corners.length - 1);
  const adjusts = useSketch((sketch) => sketch.touch) && walls > 0;
  return walls > (adjusts ? 1 : 0);
}

function useFocusOnOpen(
  controller: () => ToolController,
  field: RefObject<HTMLInputElement | null>,
  turnField: RefObject<HTMLInputElement | null>,
): void {
  useEffect(() => {
    const asksTurn = useSketch.getState().turn !== null;
    const input = asksTurn ? turnField.current : field.current;
    input?.focus({ preventScroll: true });
    input?.setSelectionRange(input.value.length, input.value.length);
    controller().typing?.();
    return useSketch.getState().touch ? keepFocusOfTap() : undefined;
  }, [controller, field, turnField]);
}

/** The typed length and turn as they were understood, and what Enter does. */
function echo(text: string, turn: string, unit: LengthUnit, hasBefore: boolean): string {
  const length = parseLength(text, unit);
  const from = hasBefore ? 'the wall before' : 'a line straight across the page';
  if (turn === '') return length.ok ? `${length.echo}: Enter sets it. ${TURN_KEY} for a turn.` : '';
  const turned = parseTurn(turn);
  if (!turned.ok) return turned.message;
  const words = turned.deg === 0 ? `straight on from ${from}` : `${turned.words} from ${from}`;
  return length.ok ? `${length.echo}, ${words}: Enter sets it.` : `Turns ${words}. Now the length.`;
}
