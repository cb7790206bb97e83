import { useEffect } from 'react';
import { tracingRotated } from '../../../../geometry/edit/tracing.ts';
import type { Tracing } from '../../../../geometry/plan/model.ts';
import { type PictureChoice, usePanels } from '../../../commands/panels.ts';
import { choiceFor, keepPictureChoice } from '../../../commands/picture-choice.ts';
import { useTracingImages } from '../../../editor/stage/tracing-images.ts';
import { loadLateTools } from '../../../editor/tools/late-tool.ts';
import { selectLevel } from '../../../state/selectors.ts';
import { useAppStore } from '../../../state/store.ts';
import { SELECT_TOOL, type Tool } from '../../../state/tool.ts';
import { megabytes } from '../../../storage/picture-file.ts';
import { ChoiceField } from '../../fields/choice-field.tsx';
import { LengthField } from '../../fields/length-field.tsx';
import { NumberField } from '../../fields/number-field.tsx';
import { useLevel } from '../../hooks/use-level.ts';
import { PictureButton } from './picture-button.tsx';
import { changeTracing, showFaded, takeTracingAway } from './tracing-actions.ts';
import './tracing-panel.css';

/** The photo or scan under the level: import, scale, opacity, lock. */
export function TracingPanel() {
  const { tracing } = useLevel();
  const open = usePanels((ui) => ui.tracingOpen);
  return (
    <details
      className="group"
      open={open}
      onToggle={(event) => usePanels.setState({ tracingOpen: event.currentTarget.open })}
    >
      <summary>
        Draw over a picture <span className="soft">{tracing ? tracing.name || 'one is here' : 'none here'}</span>
      </summary>
      {tracing ? <TracingFields tracing={tracing} /> : <BringIn words="Import a photo or scan" />}
    </details>
  );
}

/** Picks a picture file. Pasting or dropping a file does the same. */
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
  ['move', 'Drag it, or use the arrow keys'],
];

function TracingFields({ tracing }: { readonly tracing: Tracing }) {
  const unreadable = useTracingImages(({ ready }) => ready.get(tracing.image) === null);
  const { locked } = tracing;
  useEffect(() => void loadLateTools().catch(() => undefined), []);
  return (
    <div className="tracing">
      {unreadable && <p role="alert">This picture is damaged and cannot be shown. Import another one in its place.</p>}
      {!locked && <TaskButtons />}
      {!locked && <PlaceByNumbers tracing={tracing} />}
      <Fade />
      <Switches tracing={tracing} />
      <p className="small soft">
        It is kept with the plan and takes {megabytes(tracing.image.length)} of it. No verdict looks at it.
      </p>
      <SavedFile />
      <div className="buttons">
        <button type="button" className="text-button" onClick={takeTracingAway}>
          Remove it
        </button>
      </div>
      <details>
        <summary className="small">Replace the picture</summary>
        <BringIn words="Pick another one" />
      </details>
    </div>
  );
}

/** The tools that move, turn and scale the picture. */
function TaskButtons() {
  const tool = useAppStore((state) => state.tool);
  const frameOpen = useAppStore(({ tracingFrameOpen }) => tracingFrameOpen);
  const { setTool } = useAppStore.getState();
  return (
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
        aria-pressed={frameOpen}
        onClick={() => {
          setTool(SELECT_TOOL);
          useAppStore.getState().setTracingFrameOpen(!frameOpen);
        }}
      >
        Turn and size it by hand
      </button>
    </div>
  );
}

/** Fields for size, rotation and place of the picture. */
function PlaceByNumbers({ tracing }: { readonly tracing: Tracing }) {
  return (
    <details>
      <summary className="small">By numbers</summary>
      <div className="fields">
        <LengthField
          label="Width of the picture"
          value={tracing.width * tracing.scale}
          onCommit={(mm) =>
            mm > 0 ? changeTracing({ scale: mm / tracing.width }) : 'A picture needs a width above 0.'
          }
        />
        <NumberField
          label="Turned clockwise"
          value={tracing.turn}
          unit="°"
          least={-360}
          most={360}
          onCommit={(turn) => changeTracing(tracingRotated(tracing, (turn ?? 0) - tracing.turn, tracing.at))}
        />
        <LengthField
          label="Move it right by"
          value={0}
          negative
          hint="With a minus: left."
          onCommit={(mm) => changeTracing({ at: [tracing.at[0] + mm, tracing.at[1]] })}
        />
        <LengthField
          label="Move it down by"
          value={0}
          negative
          hint="With a minus: up."
          onCommit={(mm) => changeTracing({ at: [tracing.at[0], tracing.at[1] + mm] })}
        />
      </div>
    </details>
  );
}

/** Whether the picture is shown, and whether it is locked. */
function Switches({ tracing: { shown, locked } }: { readonly tracing: Tracing }) {
  return (
    <div className="tracing__checks">
      <label className="tick">
        <input
          type="checkbox"
          checked={shown}
          onChange={(event) => changeTracing({ shown: event.currentTarget.checked })}
        />
        Shown
      </label>
      <label className="tick">
        <input
          type="checkbox"
          checked={locked}
          onChange={(event) => {
            const { tool, setTool } = useAppStore.getState();
            if (tool.kind === 'tracing') setTool(SELECT_TOOL);
            useAppStore.getState().setTracingFrameOpen(false);
            changeTracing({ locked: event.currentTarget.checked });
          }}
        />
        Locked in place
      </label>
    </div>
  );
}

const IN_FILE: readonly { readonly value: PictureChoice; readonly words: string }[] = [
  { value: 'ask', words: 'Ask when it is saved' },
  { value: 'with', words: 'With the picture' },
  { value: 'without', words: 'Without it' },
];

/** Whether a saved file includes the picture: the answer given on saving, which can be changed here. */
function SavedFile() {
  const plan = useAppStore((state) => state.plan);
  const choice = usePanels(({ savedPictures }) => choiceFor(plan, savedPictures));
  return (
    <ChoiceField
      label="A saved file"
      value={choice}
      choices={IN_FILE}
      onCommit={(next) => keepPictureChoice(plan, next)}
    />
  );
}

/** The opacity: previewed while the slider moves, one step of history when it is released. */
function Fade() {
  // Not throttled: the slider must not lag behind the pointer.
  const percent = useAppStore((state) => Math.round((selectLevel(state).tracing?.opacity ?? 0) * 100));
  const settle = () => {
    const { previewPlan, run } = useAppStore.getState();
    if (previewPlan) run(() => previewPlan);
  };
  return (
    <label className="tracing__fade">
      Opacity: {percent}%
      <input
        type="range"
        min={10}
        max={100}
        step={5}
        value={percent}
        onChange={(event) => showFaded(Number(event.currentTarget.value) / 100)}
        onPointerUp={settle}
        onKeyUp={settle}
        onBlur={settle}
      />
    </label>
  );
}
