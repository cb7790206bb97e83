import { type KeyboardEvent, useEffect, useRef, useState } from 'react';
import { type LengthUnit, parseLength } from '../../../geometry/units/index.ts';
import { parseTurn } from '../../../geometry/units/parse-turn.ts';
import { useAppStore } from '../../state/store.ts';
import { type SizePx, toScreen } from '../../state/viewport.ts';
import { useSketch } from '../overlay/sketch.ts';
import type { ToolController } from '../tools/tool-controller.ts';
import { TURN_KEY } from '../tools/wall-tool.ts';
import { ScaleBox } from './scale-box.tsx';
import './length-box.css';

/** A small field beside the pointer: the length of the wall that is being drawn, as it is said. Enter sets it. */
export function LengthBox({
  controller,
  onDone,
}: {
  readonly controller: () => ToolController;
  readonly onDone: () => void;
}) {
  const typed = useSketch((sketch) => sketch.typed);
  const hasWall = useAppStore(({ chain }) => chain.corners.length > 1);
  const byFinger = useSketch((sketch) => sketch.touch);
  const asksScale = useAppStore(({ tool }) => tool.kind === 'tracing');
  if (typed === null && byFinger && hasWall) {
    return (
      <button type="button" className="button length-opener" onClick={() => useSketch.setState({ typed: '' })}>
        Type the length of this wall
      </button>
    );
  }
  if (typed === null) return null;
  if (asksScale) return <ScaleBox controller={controller} onDone={onDone} />;
  return <OpenBox first={typed} controller={controller} onDone={onDone} />;
}

function OpenBox({
  first,
  controller,
  onDone,
}: {
  readonly first: string;
  readonly controller: () => ToolController;
  readonly onDone: () => void;
}) {
  const unit = useAppStore((state) => state.plan.display.length);
  const field = useRef<HTMLInputElement>(null);
  const turnField = useRef<HTMLInputElement>(null);
  const [text, setText] = useState(first);
  const [refusal, setRefusal] = useState('');
  const turn = useSketch((sketch) => sketch.turn) ?? '';
  // Beside the corner that the wall starts from: there it stays while the pointer moves on to show the direction.
  const corner = useAppStore(({ chain }) => chain.corners.at(-1));
  const walls = useAppStore(({ chain }) => chain.corners.length - 1);
  const adjusts = useSketch((sketch) => sketch.touch) && walls > 0;
  const pointer = useSketch((sketch) => sketch.pointer);
  const at = corner ?? pointer;
  const viewport = useAppStore((state) => state.viewport);
  const stage = useAppStore((state) => state.stageSize);
  const place = placeBeside(at ? toScreen(viewport, at) : [0, 0], stage);
  const hasBefore = walls > (adjusts ? 1 : 0);

  useEffect(() => {
    const asksTurn = useSketch.getState().turn !== null;
    const input = asksTurn ? turnField.current : field.current;
    input?.focus({ preventScroll: true });
    input?.setSelectionRange(input.value.length, input.value.length);
    controller().typing?.();
  }, [controller]);
  const close = () => {
    useSketch.setState({ typed: null, turn: null });
    controller().typing?.();
    onDone();
  };
  const set = () => {
    if (text.trim() === '' && turn && parseTurn(turn).ok) {
      field.current?.focus();
      return;
    }
    const trouble = controller().typedLength?.(text) ?? '';
    if (trouble) setRefusal(trouble);
    else close();
  };
  const onKeyDown = (event: KeyboardEvent<HTMLInputElement>) => {
    const other = event.currentTarget === field.current ? turnField.current : field.current;
    if (event.key === 'Enter') set();
    if (event.key === 'Escape') close();
    if (event.key === TURN_KEY) other?.focus();
    if (['Enter', 'Escape', TURN_KEY].includes(event.key)) event.preventDefault();
    event.stopPropagation();
  };
  const typed = (change: { readonly typed?: string; readonly turn?: string }) => {
    setRefusal('');
    useSketch.setState(change);
    controller().typing?.();
  };
  return (
    <div className="length-box" style={place}>
      <label>
        Length
        <input
          ref={field}
          value={text}
          autoComplete="off"
          aria-describedby="length-box-echo"
          aria-invalid={refusal !== ''}
          onChange={(event) => {
            setText(event.target.value);
            typed({ typed: event.target.value });
          }}
          onKeyDown={onKeyDown}
        />
      </label>
      <label>
        Turns by
        <input
          ref={turnField}
          value={turn}
          placeholder="as shown"
          autoComplete="off"
          aria-describedby="length-box-echo"
          onChange={(event) => typed({ turn: event.target.value })}
          onKeyDown={onKeyDown}
        />
      </label>
      <p id="length-box-echo" role="status">
        {refusal || echo(text, turn, unit, hasBefore)}
      </p>
    </div>
  );
}

/** As large as the box gets, px. */
const BOX_PX = { width: 280, height: 176, off: 14 } as const;

/** To the right of the corner and below it; on the other side where it would leave the sheet: the sheet must not scroll. */
function placeBeside(
  [x, y]: readonly [number, number],
  stage: SizePx,
): { readonly left: number; readonly top: number } {
  const { width, height, off } = BOX_PX;
  const left = x + off + width <= stage.width ? x + off : x - off - width;
  const top = y + off + height <= stage.height ? y + off : y - off - height;
  return { left: Math.max(0, left), top: Math.max(0, top) };
}

/** What was understood, and what Enter does. */
function echo(text: string, turn: string, unit: LengthUnit, hasBefore: boolean): string {
  const length = parseLength(text, unit);
  const from = hasBefore ? 'the wall before' : 'a line straight across the page';
  if (turn === '') return length.ok ? `${length.echo}: Enter sets it. ${TURN_KEY} for a turn.` : '';
  const turned = parseTurn(turn);
  if (!turned.ok) return turned.message;
  const words = turned.deg === 0 ? `straight on from ${from}` : `${turned.words} from ${from}`;
  return length.ok ? `${length.echo}, ${words}: Enter sets it.` : `Turns ${words}. Now the length.`;
}
