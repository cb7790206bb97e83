import { useEffect, useRef, useState } from 'react';
import { parseLength } from '../../geometry/units.ts';
import { useAppStore } from '../state/store.ts';
import { toScreen } from '../state/viewport.ts';
import { useSketch } from './sketch.ts';
import type { Hand } from './tools/hand.ts';
import './length-box.css';

/** A small field beside the pointer: the length of the wall that is being drawn, as it is said. Enter sets it. */
export function LengthBox({ hand, onDone }: { readonly hand: () => Hand; readonly onDone: () => void }) {
  const typed = useSketch((sketch) => sketch.typed);
  const hasWall = useAppStore(({ chain }) => chain.corners.length > 1);
  const byFinger = useSketch((sketch) => sketch.touch);
  if (typed === null && byFinger && hasWall) {
    return (
      <button type="button" className="button length-opener" onClick={() => useSketch.setState({ typed: '' })}>
        Type the length of this wall
      </button>
    );
  }
  if (typed === null) return null;
  return <OpenBox first={typed} hand={hand} onDone={onDone} />;
}

function OpenBox({
  first,
  hand,
  onDone,
}: {
  readonly first: string;
  readonly hand: () => Hand;
  readonly onDone: () => void;
}) {
  const unit = useAppStore((state) => state.plan.display.length);
  const field = useRef<HTMLInputElement>(null);
  const [text, setText] = useState(first);
  const [refusal, setRefusal] = useState('');
  // Beside the corner that the wall starts from: there it stays while the pointer moves on to show the direction.
  const corner = useAppStore(({ chain }) => chain.corners.at(-1));
  const pointer = useSketch((sketch) => sketch.pointer);
  const at = corner ?? pointer;
  const viewport = useAppStore((state) => state.viewport);
  const [left, top] = at ? toScreen(viewport, at) : [0, 0];
  const read = parseLength(text, unit);

  useEffect(() => {
    const input = field.current;
    input?.focus();
    input?.setSelectionRange(input.value.length, input.value.length);
    hand().typing?.();
  }, [hand]);
  const close = () => {
    useSketch.setState({ typed: null });
    hand().typing?.();
    onDone();
  };
  const set = () => {
    const trouble = hand().typedLength?.(text) ?? '';
    if (trouble) setRefusal(trouble);
    else close();
  };
  return (
    <div className="length-box" style={{ left: left + 14, top: top + 14 }}>
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
            setRefusal('');
            useSketch.setState({ typed: event.target.value });
            hand().typing?.();
          }}
          onKeyDown={(event) => {
            if (event.key === 'Enter') set();
            if (event.key === 'Escape') close();
            if (event.key === 'Enter' || event.key === 'Escape') event.preventDefault();
            event.stopPropagation();
          }}
        />
      </label>
      <p id="length-box-echo" role="status">
        {refusal || (read.ok ? `${read.echo}: Enter sets it` : '')}
      </p>
    </div>
  );
}
