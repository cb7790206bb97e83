import { useEffect, useRef, useState } from 'react';
import { parseLength } from '../../../geometry/units/index.ts';
import { useAppStore } from '../../state/store.ts';
import { toScreen } from '../../state/viewport.ts';
import { keepFocusOfTap } from '../input/keep-focus.ts';
import { useSketch } from '../overlay/sketch.ts';
import type { ToolController } from '../tools/tool-controller.ts';

/** Asks how long the line is that was pressed on the picture. It lies at the edge of the sheet that is further from the line. */
export function ScaleBox({
  controller,
  onDone,
}: {
  readonly controller: () => ToolController;
  readonly onDone: () => void;
}) {
  const unit = useAppStore((state) => state.plan.display.length);
  const isLow = useAppStore(({ viewport, stageSize }) => {
    const [line] = useSketch.getState().gaps;
    const middle = line ? (toScreen(viewport, line[0])[1] + toScreen(viewport, line[1])[1]) / 2 : 0;
    return middle > stageSize.height / 2;
  });
  const field = useRef<HTMLInputElement>(null);
  const [text, setText] = useState('');
  const [refusal, setRefusal] = useState('');
  const length = parseLength(text, unit);
  useEffect(() => {
    field.current?.focus({ preventScroll: true });
    return useSketch.getState().touch ? keepFocusOfTap() : undefined;
  }, []);
  const set = () => {
    const trouble = controller().typedLength?.(text) ?? '';
    setRefusal(trouble);
    if (trouble) field.current?.focus();
    else onDone();
  };
  const giveUp = () => {
    controller().cancel();
    onDone();
  };
  return (
    <div className={`length-box scale-box scale-box--${isLow ? 'above' : 'below'}`}>
      <label>
        How long is that?
        <input
          ref={field}
          value={text}
          autoComplete="off"
          aria-describedby="scale-box-echo"
          aria-invalid={refusal !== ''}
          onChange={(event) => {
            setText(event.target.value);
            setRefusal('');
          }}
          onKeyDown={(event) => {
            if (event.key === 'Enter') set();
            if (event.key === 'Escape') giveUp();
            if (event.key === 'Enter' || event.key === 'Escape') event.preventDefault();
            event.stopPropagation();
          }}
        />
      </label>
      <p id="scale-box-echo" role="status">
        {refusal ||
          (length.ok && length.mm > 0 ? length.echo : 'As the tape reads, or as it is written on the sketch.')}
      </p>
      <button type="button" className="button" onClick={set}>
        Set the scale
      </button>
    </div>
  );
}
