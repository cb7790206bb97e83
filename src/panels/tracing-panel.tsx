import { useState } from 'react';
import type { Tracing } from '../../geometry/plan/model.ts';
import { turnedBy } from '../../geometry/tracing.ts';
import { useTracingFrame } from '../canvas/tracing-frame-store.ts';
import { useAppStore } from '../state/store.ts';
import type { Tool } from '../state/tool.ts';
import { LengthField } from './fields/length-field.tsx';
import { NumberField } from './fields/number-field.tsx';
import { PictureButton } from './picture-button.tsx';
import { changeTracing, saveWithoutPictures, takeTracingAway } from './tracing-acts.ts';
import { useUi } from './ui.ts';
import { useLevel } from './use-level.ts';
import './tracing-panel.css';

/** The photo or scan that is drawn over: brought in, brought to scale, faded, locked. */
export function TracingPanel() {
  const { tracing } = useLevel();
  const open = useUi((ui) => ui.tracingOpen);
  return (
    <details
      className="group"
      open={open}
      onToggle={(event) => useUi.setState({ tracingOpen: event.currentTarget.open })}
    >
      <summary>
        Draw over a picture <span className="soft">{tracing ? tracing.name || 'one lies here' : 'none here'}</span>
      </summary>
      {tracing ? <TracingFields tracing={tracing} /> : <BringIn words="Bring in a photo or scan" />}
    </details>
  );
}

/** Picks a picture file. Pasting and dropping one do the same. */
function BringIn({ words }: { readonly words: string }) {
  return (
    <>
      <p className="small">A sketch, a photo of one, a scan: PNG, JPEG or WebP. Or drop it on the page, or paste it.</p>
      <PictureButton className="button" words={words} />
    </>
  );
}

type Task = Extract<Tool, { kind: 'tracing' }>['task'];
const TASKS: readonly (readonly [Task, string])[] = [
  ['scale', 'Scale by two points'],
  ['straighten', 'Straighten by two points'],
  ['shift', 'Shift by two points'],
];

function TracingFields({ tracing }: { readonly tracing: Tracing }) {
  const tool = useAppStore((state) => state.tool);
  const byHand = useTracingFrame((frame) => frame.open);
  const { setTool } = useAppStore.getState();
  const { locked, shown } = tracing;
  return (
    <div className="tracing">
      {!locked && (
        <div className="buttons">
          {TASKS.map(([task, words]) => (
            <button
              key={task}
              type="button"
              className="button"
              aria-pressed={tool.kind === 'tracing' && tool.task === task}
              onClick={() => setTool({ kind: 'tracing', task })}
            >
              {words}
            </button>
          ))}
          <button
            type="button"
            className="button"
            aria-pressed={byHand}
            onClick={() => useTracingFrame.setState({ open: !byHand })}
          >
            Fit it by hand
          </button>
        </div>
      )}
      {!locked && (
        <div className="fields">
          <LengthField
            label="Breadth of the picture"
            value={tracing.width * tracing.scale}
            onCommit={(mm) =>
              mm > 0 ? changeTracing({ scale: mm / tracing.width }) : 'A picture of no breadth cannot be seen.'
            }
          />
          <NumberField
            label="Turned clockwise"
            value={tracing.turn}
            unit="°"
            least={-360}
            most={360}
            onCommit={(turn) => changeTracing(turnedBy(tracing, (turn ?? 0) - tracing.turn, tracing.at))}
          />
        </div>
      )}
      <Fade tracing={tracing} />
      <div className="tracing__checks">
        <label>
          <input
            type="checkbox"
            checked={shown}
            onChange={(event) => changeTracing({ shown: event.currentTarget.checked })}
          />{' '}
          Shown
        </label>
        <label>
          <input
            type="checkbox"
            checked={locked}
            onChange={(event) => {
              useTracingFrame.setState({ open: false });
              changeTracing({ locked: event.currentTarget.checked });
            }}
          />{' '}
          Locked where it lies
        </label>
      </div>
      <p className="small soft">
        It goes with the saved plan and never onto the marked-up sheet. No verdict looks at it.
      </p>
      <div className="buttons">
        <button type="button" className="text-button" onClick={() => void saveWithoutPictures()}>
          Save the plan without it
        </button>
        <button type="button" className="text-button" onClick={takeTracingAway}>
          Take it away
        </button>
      </div>
      <details>
        <summary className="small">Another picture instead</summary>
        <BringIn words="Pick another one" />
      </details>
    </div>
  );
}

/** How strong it shows: seen at once while the slider moves, one step of history when it is let go. */
function Fade({ tracing }: { readonly tracing: Tracing }) {
  const [moving, setMoving] = useState<number | null>(null);
  const value = moving ?? tracing.opacity;
  const settle = () => {
    if (moving !== null && moving !== tracing.opacity) changeTracing({ opacity: moving });
    setMoving(null);
  };
  return (
    <label className="tracing__fade">
      How strong it shows: {Math.round(value * 100)} %
      <input
        type="range"
        min={10}
        max={100}
        step={5}
        value={Math.round(value * 100)}
        onChange={(event) => setMoving(Number(event.currentTarget.value) / 100)}
        onPointerUp={settle}
        onKeyUp={settle}
        onBlur={settle}
      />
    </label>
  );
}
