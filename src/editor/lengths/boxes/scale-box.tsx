import { useEffect, useRef } from 'react';
import { parseLength } from '../../../../geometry/units/index.ts';
import { useAppStore } from '../../../state/store.ts';
import { toScreen } from '../../../state/viewport.ts';
import { keepFocusOfTap } from '../../input/keep-focus.ts';
import { useSketch } from '../../overlay/sketch.ts';
import type { ToolController } from '../../tools/tool-controller.ts';
import { BoxField } from './box-field.tsx';
import { useToolLength } from './use-tool-length.ts';

/** Asks for the length of the line that was pressed on the picture, at the edge of the sheet that is farther from the line. */
export function ScaleBox({
  controller,
  onDone,
}: {
  readonly controller: () => ToolController;
  readonly onDone: () => void;
}) {
  const unit = useAppStore((state) => state.plan.display.length);
  const isLow = useIsLineLow();
  const field = useRef<HTMLInputElement>(null);
  const { text, refusal, setText, apply } = useToolLength(controller, '');
  useEffect(() => {
    field.current?.focus({ preventScroll: true });
    return useSketch.getState().touch ? keepFocusOfTap() : undefined;
  }, []);
  const set = () => {
    if (apply()) onDone();
    else field.current?.focus();
  };
  const giveUp = () => {
    controller().cancel();
    onDone();
  };
  const length = parseLength(text, unit);
  const echo = length.ok && length.mm > 0 ? length.echo : 'As the tape reads, or as it is written on the sketch.';
  return (
    <div className={`length-box scale-box scale-box--${isLow ? 'above' : 'below'}`}>
      <BoxField
        label="How long is that?"
        field={field}
        value={text}
        statusId="scale-box-echo"
        isInvalid={refusal !== ''}
        onType={setText}
        onKey={({ key }) => {
          if (key === 'Enter') set();
          else if (key === 'Escape') giveUp();
          else return false;
          return true;
        }}
      />
      <p id="scale-box-echo" role="status">
        {refusal || echo}
      </p>
      <button type="button" className="button" onClick={set}>
        Set the scale
      </button>
    </div>
  );
}

/** Returns whether the pressed line is in the lower half of the stage. */
function useIsLineLow(): boolean {
  return useAppStore(({ viewport, stageSize }) => {
    const [line] = useSketch.getState().gaps;
    const middle = line ? (toScreen(viewport, line[0])[1] + toScreen(viewport, line[1])[1]) / 2 : 0;
    return middle > stageSize.height / 2;
  });
}
