import { useEffect, useRef, useState } from 'react';
import type { FaceEnd, RunningDimension } from '../../geometry/running-dimensions.ts';
import { echoLength } from '../../geometry/units/format.ts';
import { parseLength } from '../../geometry/units.ts';
import { wallEndNames } from '../../geometry/words.ts';
import { correctDimension } from '../state/dimension-acts.ts';
import { useAppStore } from '../state/store.ts';
import { figureOf, openNextFigure, placeOfFigure, useFigure } from './figures.ts';
import { useSketch } from './sketch.ts';
import './length-box.css';

/** The field over a figure that was pressed. Enter sets it, Tab goes to the next figure, Escape leaves it as it was. */
export function FigureBox({ onDone }: { readonly onDone: () => void }) {
  const open = useFigure((figure) => figure.open);
  const figure = useAppStore((state) => open && figureOf(state, open));
  useEffect(() => {
    // What it measured is gone: by undo, or with the thing.
    if (open && !figure) useFigure.setState({ open: null });
  }, [open, figure]);
  return figure ? <OpenBox key={figure.key} figure={figure} onDone={onDone} /> : null;
}

function OpenBox({ figure, onDone }: { readonly figure: RunningDimension; readonly onDone: () => void }) {
  const unit = useAppStore((state) => state.plan.display.length);
  useAppStore((state) => state.viewport); // the box goes along with the sheet
  const field = useRef<HTMLInputElement>(null);
  const shown = echoLength(figure.length, unit).replace(/^about /, '≈ ');
  const [text, setText] = useState(shown);
  const [refusal, setRefusal] = useState('');
  const ends = figure.of === 'face' ? wallEndNames({ from: figure.line[0], to: figure.line[1] }) : null;
  // As one draws: from the left and from above.
  const [end, setEnd] = useState<FaceEnd>(ends?.from === 'right' || ends?.from === 'lower' ? 'from' : 'to');
  const [left, top] = placeOfFigure(useAppStore.getState(), figure);
  const changed = text.trim() !== shown;
  const read = changed ? parseLength(text, unit) : null;

  useEffect(() => {
    field.current?.focus();
    field.current?.select();
    return useSketch.getState().touch ? keepFocusOfTap() : undefined;
  }, []);
  const close = () => {
    useFigure.setState({ open: null });
    onDone();
  };
  /** Whether it stands: nothing was typed, or what was typed is drawn. */
  const set = (): boolean => {
    if (!read) return true;
    const trouble = read.ok ? correctDimension(figure, read.mm, end) : read.message;
    setRefusal(trouble);
    return trouble === '';
  };
  const onKey = (event: React.KeyboardEvent) => {
    event.stopPropagation();
    if (event.key === 'Escape') close();
    else if (event.key === 'Enter' && set()) close();
    else if (event.key === 'Tab' && event.target === field.current && figure.of !== 'face') {
      if (set()) openNextFigure(useAppStore.getState(), event.shiftKey ? -1 : 1);
    } else return;
    event.preventDefault();
  };
  /** A press elsewhere takes over what was typed; what cannot stand is said, and the drawing stays as it was. */
  const onLeave = (event: React.FocusEvent) => {
    if (event.currentTarget.contains(event.relatedTarget) || useFigure.getState().open !== figure.key) return;
    if (read) {
      const trouble = read.ok ? correctDimension(figure, read.mm, end) : read.message;
      if (trouble) useAppStore.getState().say(trouble);
    }
    useFigure.setState({ open: null });
  };
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: keys of the fields inside
    <div className="length-box" style={{ left: left + 8, top: top + 12 }} onKeyDown={onKey} onBlur={onLeave}>
      <label>
        {WORDS[figure.of]}
        <input
          ref={field}
          value={text}
          autoComplete="off"
          aria-describedby="figure-box-echo"
          aria-invalid={refusal !== ''}
          onChange={(event) => {
            setText(event.target.value);
            setRefusal('');
          }}
        />
      </label>
      {ends && (
        <label>
          Moves
          <select value={end} onChange={(event) => setEnd(event.target.value === 'from' ? 'from' : 'to')}>
            <option value="from">the {ends.from} wall</option>
            <option value="to">the {ends.to} wall</option>
          </select>
        </label>
      )}
      <p id="figure-box-echo" role="status">
        {refusal || (read?.ok ? `${read.echo}: Enter sets it` : 'Type what the tape reads.')}
      </p>
    </div>
  );
}

/** A tap is followed by the press of a mouse that there is not, which would take the focus to the sheet. */
function keepFocusOfTap(): () => void {
  const openedAt = performance.now();
  const onPress = (event: MouseEvent) => {
    if (performance.now() - openedAt < TAP_MS) event.preventDefault();
  };
  window.addEventListener('mousedown', onPress, { capture: true });
  return () => window.removeEventListener('mousedown', onPress, { capture: true });
}
const TAP_MS = 500;

const WORDS = { face: 'Length', gap: 'To the wall', clear: 'Length', width: 'Width' } as const;
