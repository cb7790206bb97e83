import { useEffect, useLayoutEffect, useRef, useState } from 'react';
import type { XY } from '../../../geometry/plan/model.ts';
import { fieldLength } from '../../../geometry/units/format.ts';
import { parseLength } from '../../../geometry/units/index.ts';
import { selectModel } from '../../state/selectors.ts';
import { useAppStore } from '../../state/store.ts';
import { type SizePx, toScreen } from '../../state/viewport.ts';
import { keepFocusOfTap } from '../input/keep-focus.ts';
import { useSketch } from '../overlay/sketch.ts';
import { figurePlaceOf, nextFigure } from './figures.ts';
import { closeLength, type OpenLength, openLength, stepLength, useLengths } from './store.ts';
import { type ReadLength, readLength, subjectKey } from './subject.ts';
import './typed-length.css';

/** What the box takes up, px: while it waits, without and with the choice of the end that moves; so far off its figure. */
const BOX_PX = { width: 280, waiting: 40, height: 110, taller: 190, off: 20 } as const;

/**
 * The field of the length on the sheet that was pressed, or that waits to be typed after a thing was set down. Enter applies it; what
 * cannot be is said and the field stays; Escape gives it up.
 */
export function TypedLength({ onDone }: { readonly onDone: () => void }) {
  const open = useLengths(({ open }) => open);
  return open && <LiveBox open={open} onDone={onDone} />;
}

function LiveBox({ open, onDone }: { readonly open: OpenLength; readonly onDone: () => void }) {
  // Read anew whenever the plan is another one.
  useAppStore(selectModel);
  const read = readLength(open.subject);
  const gone = read === null;
  useEffect(() => {
    if (gone) closeLength();
  }, [gone]);
  return read && <Box key={`${subjectKey(open.subject)} ${open.at}`} read={read} onDone={onDone} />;
}

function Box({ read, onDone }: { readonly read: ReadLength; readonly onDone: () => void }) {
  const unit = useAppStore((state) => state.plan.display.length);
  const viewport = useAppStore((state) => state.viewport);
  const stageSize = useAppStore((state) => state.stageSize);
  const open = useLengths(({ open }) => open);
  const shown = fieldLength(read.value, unit);
  const [text, setText] = useState<string | null>(null);
  const [refusal, setRefusal] = useState('');
  const field = useRef<HTMLInputElement>(null);
  const typing = open?.typing ?? false;
  const first = open?.first ?? null;
  useLayoutEffect(() => {
    const input = field.current;
    if (!typing || !input) return undefined;
    if (first !== null) setText(first);
    input.focus({ preventScroll: true });
    if (first === null) input.select();
    return useSketch.getState().touch ? keepFocusOfTap() : undefined;
  }, [typing, first]);
  useClosedByPressElsewhere(field);
  useFigurePlaced();
  if (!open) return null;

  const done = () => {
    closeLength();
    onDone();
  };
  /** Whether the length stands now as it is written. */
  const taken = (): boolean => {
    if (text === null || text.trim() === shown) return true;
    const length = parseLength(text, unit, { bare: read.bare, negative: read.negative });
    const trouble = length.ok ? read.commit(length.mm, open.moves) : length.message;
    setRefusal(trouble);
    // The refusal stands at the field; said twice it would only be in the way.
    if (trouble) useAppStore.getState().say('');
    return !trouble;
  };
  const goOn = (by: 1 | -1 | 'enter') => {
    if (!taken()) return;
    const asked = by !== 'enter' || open.at + 1 < open.asked;
    if (asked && stepLength(by === 'enter' ? 1 : by)) return;
    const next = by === 'enter' || open.run.length > 1 ? null : nextFigure(by);
    if (next) openLength(next, true);
    else done();
  };
  const [left, top] = boxPlace(
    figurePlaceOf(open.subject) ?? toScreen(viewport, read.at),
    stageSize,
    typing ? Math.max(1, read.ends.length) : 0,
  );
  if (!typing) {
    return (
      <p className="length-box typed-length typed-length--waits" style={{ left, top }} role="status">
        <b>{read.label}</b> {shown}: type it
      </p>
    );
  }
  const length = text === null ? null : parseLength(text, unit, { bare: read.bare, negative: read.negative });
  return (
    <div className="length-box typed-length" style={{ left, top }}>
      <label>
        {read.label}
        <input
          ref={field}
          value={text ?? shown}
          autoComplete="off"
          autoCapitalize="off"
          spellCheck={false}
          aria-describedby="typed-length-said"
          aria-invalid={refusal !== ''}
          onChange={(event) => {
            setText(event.target.value);
            setRefusal('');
          }}
          onBlur={(event) => {
            // Left by Enter, Tab or Escape: it is settled, and set twice it would move twice.
            if (useLengths.getState().open !== open) return;
            const within = event.relatedTarget instanceof Element && event.relatedTarget.closest('.typed-length');
            if (!within && taken()) closeLength();
          }}
          onKeyDown={(event) => {
            if (event.key === 'Enter') goOn('enter');
            else if (event.key === 'Escape') done();
            else if (event.key === 'Tab' && (open.run.length > 1 || read.ends.length < 2))
              goOn(event.shiftKey ? -1 : 1);
            else {
              event.stopPropagation();
              return;
            }
            event.preventDefault();
            event.stopPropagation();
          }}
        />
      </label>
      <p id="typed-length-said" role="status">
        {refusal || (length?.ok && length.echo !== text?.trim() ? `${length.echo}: Enter sets it` : 'Enter sets it')}
      </p>
      <EndChoice read={read} onChoice={() => field.current?.focus()} />
    </div>
  );
}

/** Below the figure, above it or beside it: on the stage, and never over the figure itself. */
function boxPlace([x, y]: XY, stage: SizePx, ends: number): XY {
  const { width, off } = BOX_PX;
  const height = [BOX_PX.waiting, BOX_PX.height, BOX_PX.taller][Math.min(ends, 2)] as number;
  const spots: readonly XY[] = [
    [x - width / 2, y + off],
    [x - width / 2, y - off - height],
    [x + 2 * off, y - height / 2],
    [x - 2 * off - width, y - height / 2],
  ];
  const held = ([left, top]: XY): XY => [
    Math.min(Math.max(8, left), Math.max(8, stage.width - width - 8)),
    Math.min(Math.max(8, top), Math.max(8, stage.height - height - 8)),
  ];
  const covers = ([left, top]: XY) => left < x && x < left + width && top < y + 12 && y - 12 < top + height;
  return spots.map(held).find((spot) => !covers(spot)) ?? held(spots[0] as XY);
}

/** Which end gives way, where either can. */
function EndChoice({ read, onChoice }: { readonly read: ReadLength; readonly onChoice: () => void }) {
  const open = useLengths(({ open }) => open);
  if (!open || read.ends.length < 2) return null;
  const moves = open.moves ?? read.ends[0]?.moves;
  return (
    <fieldset className="typed-length__ends">
      <legend>What moves</legend>
      {read.ends.map((end) => (
        <button
          key={end.moves}
          type="button"
          className="button"
          aria-pressed={end.moves === moves}
          onClick={() => {
            useLengths.setState({ open: { ...open, moves: end.moves, typing: true } });
            onChoice();
          }}
        >
          {end.words}
        </button>
      ))}
    </fieldset>
  );
}

/** Draws the box again when the sheet has been: a figure has its place only then. */
function useFigurePlaced(): void {
  const [, setFrames] = useState(0);
  useEffect(() => {
    let asked = requestAnimationFrame(() => {
      asked = requestAnimationFrame(() => setFrames((frames) => frames + 1));
    });
    return () => cancelAnimationFrame(asked);
  }, []);
}

/** A field that only waits goes when something else is pressed; one that is typed into is taken over by leaving it. */
function useClosedByPressElsewhere(field: React.RefObject<HTMLInputElement | null>): void {
  useEffect(() => {
    const onDown = (event: PointerEvent) => {
      const within = event.target instanceof Element && event.target.closest('.typed-length');
      if (!within && document.activeElement !== field.current) closeLength();
    };
    window.addEventListener('pointerdown', onDown, { capture: true });
    return () => window.removeEventListener('pointerdown', onDown, { capture: true });
  }, [field]);
}
