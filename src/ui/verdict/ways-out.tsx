import { useRef } from 'react';
import type { DetectorReport } from '../../../geometry/check/types.ts';
import type { Detector, XY } from '../../../geometry/plan/model.ts';
import { unbrokenFigures } from '../../../geometry/units/no-break.ts';
import { type Remedy, remediesFor } from '../../advice/remedies.ts';
import { coverOpenings } from '../../commands/cover-openings.ts';
import { nameRoom } from '../../commands/go-to.ts';
import { refuseLocked } from '../../state/locked-detectors.ts';
import { isGestureUnderWay, selectModel } from '../../state/selectors.ts';
import { useAppStore } from '../../state/store.ts';
import { SELECT_TOOL } from '../../state/tool.ts';
import { useThrottled } from '../hooks/use-throttled.ts';

/** The remedies of a verdict, each as a button. */
export function WaysOut({ detector, report }: { readonly detector: Detector; readonly report: DetectorReport }) {
  const plan = useAppStore((state) => state.plan);
  const model = useThrottled(selectModel);
  const carried = useAppStore(isGestureUnderWay);
  const last = useRef<readonly Remedy[]>([]);
  if (carried) return <RoomForWays ways={last.current} />;
  const ways = remediesFor(plan, model, detector, report);
  last.current = ways;
  if (report.verdict === 'clear') return null;
  if (ways.length === 0) {
    if (report.verdict !== 'blocked') return null;
    return (
      <p className="verdict-panel__no-way">
        {detector.pair === null
          ? 'No spot on this level passes at this height. '
          : 'No spot was found that passes at this height with the spacing of the pair as it is. '}
        Change the height, move what is in the way, or test another room.
      </p>
    );
  }
  return (
    <div className="buttons verdict-panel__ways">
      {ways.map((way, index) => (
        <button
          key={way.words}
          type="button"
          className={index === 0 ? 'button button--main' : 'button'}
          onClick={() => take(way, detector.id)}
        >
          {unbrokenFigures(way.words)}
        </button>
      ))}
    </div>
  );
}

/** A button that moves the detector without a drag: a press here, then a press on the sheet. */
export function ByPress({ id }: { readonly id: string }) {
  const isActive = useAppStore(({ tool }) => tool.kind === 'move-here' && tool.ids[0] === id);
  const move = () => {
    const { select, setTool } = useAppStore.getState();
    select([id]);
    if (!isActive && refuseLocked(useAppStore.getState(), [id])) return;
    setTool(isActive ? SELECT_TOOL : { kind: 'move-here', ids: [id] });
  };
  return (
    <button type="button" className="button verdict-panel__by-press" aria-pressed={isActive} onClick={move}>
      Press where it goes
    </button>
  );
}

/** During a drag the buttons are hidden but keep their place, so that the list of clearances does not move. */
function RoomForWays({ ways }: { readonly ways: readonly Remedy[] }) {
  if (ways.length === 0) return null;
  return (
    <div className="buttons verdict-panel__ways verdict-panel__ways--away" aria-hidden="true">
      {ways.map(({ words }) => (
        <span key={words} className="button">
          {unbrokenFigures(words)}
        </span>
      ))}
    </div>
  );
}

/** Moves several items, as one step of history. */
function moveTogether(places: ReadonlyMap<string, XY>): void {
  const placed = <Item extends { readonly id: string; readonly at: XY }>(item: Item): Item => {
    return { ...item, at: places.get(item.id) ?? item.at };
  };
  useAppStore.getState().run((plan) => ({
    ...plan,
    levels: plan.levels.map((level) =>
      level.detectors.some(({ id }) => places.has(id)) ? { ...level, detectors: level.detectors.map(placed) } : level,
    ),
  }));
}

function take(way: Remedy, id: string): void {
  const { updateItem, select } = useAppStore.getState();
  if (way.kind === 'name-room') {
    nameRoom(way.at);
    return;
  }
  if (way.kind === 'level') {
    useAppStore.getState().setLevel(way.levelId);
    return;
  }
  if (way.kind === 'pair') {
    if (!refuseLocked(useAppStore.getState(), [...way.places.keys()])) moveTogether(way.places);
    select([id]);
    return;
  }
  if (way.kind === 'cover') {
    coverOpenings(way.ids);
    return;
  }
  updateItem(id, way.kind === 'move' ? { at: way.at } : { base: way.base });
  select([id]);
}
