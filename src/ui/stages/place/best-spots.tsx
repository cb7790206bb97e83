import { useEffect, useState } from 'react';
import { capital } from '../../../../geometry/messages/index.ts';
import type { Detector } from '../../../../geometry/plan/model.ts';
import type { Probe } from '../../../../geometry/region/types.ts';
import { formatMeasured } from '../../../../geometry/units/index.ts';
import { type BestPlace, PLACES } from '../../../platform/worker/place-query.ts';
import { selectLevelBar, selectModel } from '../../../state/selectors.ts';
import { useShown } from '../../../state/shown.ts';
import { type DescribedPlace, moveToPlace, setPlace } from '../../../state/spots.ts';
import { useAppStore } from '../../../state/store.ts';
import { useLevel } from '../../hooks/use-level.ts';
import { useThrottled } from '../../hooks/use-throttled.ts';
import { Loosened } from './loosened.tsx';
import { PlaceRow } from './place-row.tsx';
import { type Best, useBestPlaces, useDescribedPlaces } from './use-best-places.ts';
import './spots.css';

/** The places with the largest margin on the level in view. One press highlights a place on the sheet, another places a detector there. */
export function BestSpots() {
  const [onFurniture, setOnFurniture] = useState(false);
  const best = useBestPlaces('spots', { members: 1, count: PLACES, onFurniture });
  const single = useSingle();
  const rows = useDescribedPlaces(best, single ? [single] : []);
  const lit = useShown((shown) => shown.lit);
  const { probe } = best.wanted;
  useMarks(rows, probe);
  return (
    <section className="spots" aria-labelledby="spots-heading">
      <h3 id="spots-heading">Where is the best spot?</h3>
      <button type="button" className="button" aria-pressed={onFurniture} onClick={() => setOnFurniture(!onFurniture)}>
        On furniture first
      </button>
      {rows.length === 0 ? (
        <NoPlace best={best} />
      ) : (
        <>
          <ol className="places" aria-label="Best spots, the most to spare first" aria-busy={!best.settled}>
            {rows.map(({ words }, index) => {
              const name = String(index + 1);
              return (
                <li key={name}>
                  <PlaceRow
                    name={name}
                    words={words}
                    lit={lit === name}
                    onLight={() => useShown.setState({ lit: name })}
                  />
                </li>
              );
            })}
          </ol>
          <SpotActions place={rows[Number(lit ?? 1) - 1]?.place} probe={probe} single={single} lit={lit ?? '1'} />
        </>
      )}
      <Loosened />
      <p className="fine soft">
        By what is drawn, at this height, and by direct sun where it is worked out: for the days of the test, without
        clouds.
      </p>
    </section>
  );
}

/** Marks the places on the sheet while the list is shown. */
function useMarks(rows: readonly DescribedPlace[], { radius }: Probe): void {
  const levelId = useLevel().id;
  useEffect(() => {
    const spots = rows.map(({ place: { axes }, words: { limit } }, index) => {
      return { name: String(index + 1), axes, radius, limit };
    });
    useShown.setState({ levelId, spots });
  }, [rows, radius, levelId]);
  useEffect(() => () => useShown.setState({ spots: [], lit: null }), []);
}

/** Returns the selected detector; undefined if it is one of a pair, which is moved as a pair under "Side by side". */
function useSingle(): Detector | undefined {
  const { detectors } = useLevel();
  const selection = useAppStore((state) => state.selection);
  const chosen = detectors.find(({ id }) => selection.includes(id));
  return chosen?.pair === null ? chosen : undefined;
}

interface ActionProps {
  readonly place: BestPlace | undefined;
  readonly probe: Probe;
  readonly single: Detector | undefined;
  readonly lit: string;
}

function SpotActions({ place, probe, single, lit }: ActionProps) {
  if (!place) return null;
  return (
    <div className="buttons">
      {single && (
        <button type="button" className="button button--main" onClick={() => moveToPlace([single], place, probe)}>
          Move {single.label.trim() || 'it'} to spot {lit}
        </button>
      )}
      <button
        type="button"
        className={single ? 'button' : 'button button--main'}
        onClick={() => setPlace(place, probe)}
      >
        Set {single ? 'a new one' : 'one'} at spot {lit}
      </button>
    </div>
  );
}

function NoPlace({ best: { settled, wanted } }: { readonly best: Best }) {
  const bar = useAppStore(selectLevelBar);
  const hasRooms = useThrottled(selectModel).rooms.length > 0;
  const unit = useAppStore((state) => state.plan.display.length);
  if (bar) return <p>{capital(bar)} No spot is offered here.</p>;
  if (!hasRooms) return <p>Close a room first.</p>;
  if (!settled) return <p>Looking for the best spots…</p>;
  return (
    <p>
      No spot on this level passes {formatMeasured(wanted.probe.base, unit)} above the floor. Try another height, or
      enter what the rooms are used for.
    </p>
  );
}
