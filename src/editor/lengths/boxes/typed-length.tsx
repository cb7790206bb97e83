import { useEffect, useRef, useState } from 'react';
import { fieldLength } from '../../../../geometry/units/format.ts';
import { selectModel } from '../../../state/selectors.ts';
import { useAppStore } from '../../../state/store.ts';
import { toScreen } from '../../../state/viewport.ts';
import { useSketch } from '../../overlay/sketch.ts';
import { figurePlaceOf } from '../figures.ts';
import { closeLength, type OpenLength, useLengths } from '../store.ts';
import { subjectKey } from '../subject.ts';
import { placeAtFigure } from './box-place.ts';
import { type ReadLength, readLength } from './read-length.ts';
import { TypedLengthField } from './typed-length-field.tsx';
import { useBoxHeight } from './use-box-height.ts';
import './typed-length.css';

/**
 * The field of a length that was pressed on the sheet, or that waits to be typed after a thing was placed. Enter applies it; for a length
 * that is refused the field shows why and stays open; Escape closes it.
 */
export function TypedLength({ onDone }: { readonly onDone: () => void }) {
  const open = useLengths(({ open }) => open);
  return open && <OpenBox open={open} onDone={onDone} />;
}

function OpenBox({ open, onDone }: { readonly open: OpenLength; readonly onDone: () => void }) {
  // These subscriptions read the length again whenever the plan or the way of taping changes.
  useAppStore(selectModel);
  useAppStore(({ wallSettings }) => wallSettings.by);
  const read = readLength(open.subject);
  const gone = read === null;
  useEffect(() => {
    if (gone) closeLength();
  }, [gone]);
  return read && <Box key={`${subjectKey(open.subject)} ${open.at}`} open={open} read={read} onDone={onDone} />;
}

function Box({
  open,
  read,
  onDone,
}: {
  readonly open: OpenLength;
  readonly read: ReadLength;
  readonly onDone: () => void;
}) {
  const unit = useAppStore((state) => state.plan.display.length);
  const viewport = useAppStore((state) => state.viewport);
  const stageSize = useAppStore((state) => state.stageSize);
  const byFinger = useSketch(({ touch }) => touch);
  const field = useRef<HTMLInputElement>(null);
  useClosedByPressElsewhere(field);
  useFigurePlaced();
  const [box, height] = useBoxHeight<HTMLDivElement>(open.typing ? 150 : 40);
  const place = placeAtFigure(figurePlaceOf(open.subject) ?? toScreen(viewport, read.at), stageSize, height);
  const shown = fieldLength(read.value, unit);
  if (open.typing) {
    return (
      <TypedLengthField open={open} read={read} shown={shown} place={place} box={box} field={field} onDone={onDone} />
    );
  }
  if (byFinger) {
    // The keyboard on the screen would cover half the sheet, so it opens only on request.
    return (
      <button
        type="button"
        className="length-box typed-length typed-length--opens"
        style={place}
        onClick={() => useLengths.setState({ open: { ...open, typing: true }, fingerTypes: true })}
      >
        <b>{read.label}</b> {shown}. Tap to type it
      </button>
    );
  }
  return (
    <p className="length-box typed-length typed-length--waits" style={place} role="status">
      <b>{read.label}</b> {shown}: type it{read.ends.length > 1 && `. ${read.ends[0]?.words} moves`}
    </p>
  );
}

/** Renders the box again after the sheet is painted, since a figure has a place only then. */
function useFigurePlaced(): void {
  const [, setFrames] = useState(0);
  useEffect(() => {
    let asked = requestAnimationFrame(() => {
      asked = requestAnimationFrame(() => setFrames((frames) => frames + 1));
    });
    return () => cancelAnimationFrame(asked);
  }, []);
}

/** Closes a waiting field when something else is pressed. A field that has the focus handles its own blur. */
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
