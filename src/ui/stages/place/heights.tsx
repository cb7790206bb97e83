import { type KeyboardEvent, useMemo } from 'react';
import { capital, heightsRefusal } from '../../../../geometry/messages/index.ts';
import type { Detector, Mm } from '../../../../geometry/plan/model.ts';
import { memoizeLatest } from '../../../../geometry/plane/memoize.ts';
import { formatMeasured, type LengthUnit } from '../../../../geometry/units/index.ts';
import { ceilingAction } from '../../../advice/guidance/answer-actions.ts';
import {
  caughtHeight,
  type HeightLane,
  heightLane,
  isAllowed,
  sameLane,
  steppedHeight,
  stopsOf,
} from '../../../advice/heights.ts';
import { followHint } from '../../../commands/go-to.ts';
import { usePanels } from '../../../commands/panels.ts';
import type { AppState } from '../../../state/app-state.ts';
import {
  isGestureUnderWay,
  selectDragged,
  selectLevel,
  selectModel,
  selectProbe,
  selectShownPlan,
} from '../../../state/selectors.ts';
import { useAppStore } from '../../../state/store.ts';
import { LengthField } from '../../fields/length-field.tsx';
import { useLevel, usePlan } from '../../hooks/use-level.ts';
import { useThrottled } from '../../hooks/use-throttled.ts';
import { type DrawnLane, HeightScale, SCALE_STYLE } from './height-scale.tsx';
import './spots.css';

/** Sets the height that the sheet is shaded for, by slider or field; beside it the allowed heights at the selected detector and the pointer. */
export function Heights() {
  const { id, ceiling, ceilingAnswered } = useLevel();
  const shaded = useAppStore((state) => state.sitHeight);
  const tall = useAppStore((state) => selectProbe(state).tall);
  const unit = useAppStore((state) => state.plan.display.length);
  const chosen = useThrottled(selectChosen);
  const standing = useLane(chosen, chosen?.at ?? null);
  const isShown = usePanels(({ stage }) => stage === 'place');
  const pointer = useAppStore((state) => (isShown ? selectPointerLane(state) : null));
  const name = chosen ? chosen.label.trim() || 'selected' : '';
  const lanes: DrawnLane[] = [
    ...(chosen && standing ? [{ name, lane: standing, base: chosen.base }] : []),
    ...(pointer ? [{ name: 'Pointer', lane: pointer, base: null }] : []),
  ];
  const set = (base: Mm) => shadeFor(Math.min(Math.max(base, 0), Math.max(0, ceiling - tall)), chosen, unit);
  return (
    <section className="heights" aria-labelledby="heights-heading">
      <h3 id="heights-heading">How high?</h3>
      {ceilingAnswered === false && (
        <p className="fine">
          The ceiling is not measured: {formatMeasured(ceiling, unit)} is assumed here.{' '}
          <button type="button" className="text-button" onClick={() => followHint(ceilingAction(id))}>
            {ceilingAction(id).label}
          </button>
        </p>
      )}
      <LengthField
        label="Shade the plan for a detector at"
        value={shaded}
        bare="small"
        hint="Its underside above the finished floor. One that is set on a table stands as high as the table."
        onCommit={(base) => {
          const refusal = heightsRefusal(base, base + tall, ceiling, unit);
          if (refusal) return refusal;
          set(base);
          return undefined;
        }}
      />
      <div className="heights__scale" style={SCALE_STYLE}>
        <Slider shaded={shaded} ceiling={ceiling} unit={unit} lane={standing} onSet={set} />
        <HeightScale ceiling={ceiling} shaded={shaded} lanes={lanes} unit={unit} />
      </div>
      {chosen && standing && <OfDetector detector={chosen} name={name} lane={standing} shaded={shaded} unit={unit} />}
      <div className="heights__pointer">
        {pointer ? (
          <LaneWords name="Under the pointer" lane={pointer} />
        ) : (
          <p className="fine soft">Point at the plan to see the heights there.</p>
        )}
      </div>
    </section>
  );
}

interface SliderProps {
  readonly shaded: Mm;
  readonly ceiling: Mm;
  readonly unit: LengthUnit;
  /** At the selected detector; null for none. */
  readonly lane: HeightLane | null;
  readonly onSet: (base: Mm) => void;
}

function Slider({ shaded, ceiling, unit, lane, onSet }: SliderProps) {
  const stops = lane ? stopsOf(lane) : [];
  const onKeyDown = (event: KeyboardEvent) => {
    const next = keyedHeight(event.key, shaded, ceiling, unit, stops);
    if (next === null) return;
    event.preventDefault();
    onSet(next);
  };
  const valueText = `${formatMeasured(shaded, unit)} above the floor`;
  const verdict = lane && (isAllowed(lane, shaded) ? ', allowed at the detector' : ', not allowed at the detector');
  return (
    <input
      type="range"
      className="heights__slider"
      aria-label="Height that the plan is shaded for"
      aria-orientation="vertical"
      aria-valuetext={`${valueText}${verdict ?? ''}`}
      min={0}
      max={ceiling}
      step="any"
      value={shaded}
      onKeyDown={onKeyDown}
      onChange={(event) => onSet(caughtHeight(event.currentTarget.valueAsNumber, unit, stops))}
    />
  );
}

function keyedHeight(key: string, from: Mm, ceiling: Mm, unit: LengthUnit, stops: readonly Mm[]): Mm | null {
  switch (key) {
    case 'ArrowUp':
    case 'ArrowRight':
      return steppedHeight(from, 'up', 'one', unit, stops);
    case 'ArrowDown':
    case 'ArrowLeft':
      return steppedHeight(from, 'down', 'one', unit, stops);
    case 'PageUp':
      return steppedHeight(from, 'up', 'many', unit, stops);
    case 'PageDown':
      return steppedHeight(from, 'down', 'many', unit, stops);
    case 'Home':
      return 0;
    case 'End':
      return ceiling;
    default:
      return null;
  }
}

interface OfDetectorProps {
  readonly detector: Detector;
  readonly name: string;
  readonly lane: HeightLane;
  readonly shaded: Mm;
  readonly unit: LengthUnit;
}

/** The allowed heights at the place of the detector, and buttons that move it to one of them. */
function OfDetector({ detector: { id, base, tall }, name, lane, shaded, unit }: OfDetectorProps) {
  const { ceiling } = useLevel();
  const { updateItem, say } = useAppStore.getState();
  const { carrier } = lane;
  const elsewhere = base !== shaded;
  const setAt = (height: Mm) => {
    const refusal = heightsRefusal(height, height + tall, ceiling, unit) || updateItem(id, { base: height });
    if (refusal) say(refusal);
    else shadeFor(height, null, unit);
  };
  return (
    <>
      <LaneWords name={name} lane={lane} />
      {elsewhere && (
        <p>
          Shaded for {formatMeasured(shaded, unit)}; {name} stands at {formatMeasured(base, unit)}.
        </p>
      )}
      <div className="buttons">
        {elsewhere && (
          <button type="button" className="button button--main" onClick={() => setAt(shaded)}>
            Set {name} at {formatMeasured(shaded, unit)}
          </button>
        )}
        {elsewhere && (
          <button type="button" className="button" onClick={() => shadeFor(base, null, unit)}>
            Shade for {name} again
          </button>
        )}
        {carrier && carrier.top !== base && (
          <button type="button" className="button" onClick={() => setAt(carrier.top)}>
            Set {name} on {carrier.name}, {formatMeasured(carrier.top, unit)}
          </button>
        )}
      </div>
    </>
  );
}

/** The allowed intervals in words, and what limits them. */
function LaneWords({ name, lane: { words } }: { readonly name: string; readonly lane: HeightLane }) {
  if (words.length === 0) {
    return (
      <p className="heights__words">
        <strong>{name}:</strong> no height is allowed. What blocks here blocks at every height.
      </p>
    );
  }
  return words.map(({ lowest, highest, above, below }) => (
    <div key={lowest} className="heights__words">
      <p>
        <strong>{name}:</strong> {highest ? `${lowest} to ${highest}` : `${lowest}, no other`}
      </p>
      <p className="soft">Not higher: {above}.</p>
      <p className="soft">Not lower: {below}.</p>
    </div>
  ));
}

/** Shades the sheet for a height. Shows a message if that is not the height of the selected detector. */
function shadeFor(base: Mm, chosen: Detector | null, unit: LengthUnit): void {
  const { setSitHeight, say } = useAppStore.getState();
  setSitHeight(base);
  if (!chosen || chosen.base === base) {
    say('');
    return;
  }
  const name = capital(chosen.label.trim() || 'the selected one');
  say(`The plan is shaded for ${formatMeasured(base, unit)}. ${name} stands at ${formatMeasured(chosen.base, unit)}.`);
}

/** The selected detector, during a drag where it is dragged; null for none. */
function selectChosen(state: AppState): Detector | null {
  const chosen = selectLevel(state).detectors.find(({ id }) => state.selection.includes(id));
  const dragged = selectDragged(state);
  return chosen && dragged?.id === chosen.id ? dragged : (chosen ?? null);
}

function useLane(size: Pick<Detector, 'radius' | 'tall'> | null, at: Detector['at'] | null): HeightLane | null {
  const plan = usePlan();
  const model = useThrottled(selectModel);
  return useMemo(() => (size && at ? heightLane(plan, model, size, at) : null), [plan, model, size, at]);
}

/** The same object as long as the pointer moves over floor with the same heights: then nothing is drawn again. */
const laneAt = memoizeLatest(heightLane, undefined, (before, now) => (sameLane(before, now) ? before : now));

/** The allowed heights at the pointer or the crosshair; null during a gesture, and if there is none. */
function selectPointerLane(state: AppState): HeightLane | null {
  const at = isGestureUnderWay(state) ? null : state.hover?.at;
  return at ? laneAt(selectShownPlan(state), selectModel(state), selectProbe(state), at) : null;
}
