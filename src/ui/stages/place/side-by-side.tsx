import { useEffect, useState } from 'react';
import type { Detector } from '../../../../geometry/plan/model.ts';
import { addCompanion } from '../../../commands/companion.ts';
import { selectLevelBar } from '../../../state/selectors.ts';
import { useShown } from '../../../state/shown.ts';
import { gapWords } from '../../../state/side-by-side.ts';
import { moveToPlace, setPlace } from '../../../state/spots.ts';
import { useAppStore } from '../../../state/store.ts';
import { ChoiceField } from '../../fields/choice-field.tsx';
import { useLevel } from '../../hooks/use-level.ts';
import { PlaceRow } from './place-row.tsx';
import { type Best, useBestPlaces, useDescribedPlaces } from './use-best-places.ts';
import './spots.css';

const COUNTS = [
  { value: '2', words: 'Two, a pair' },
  { value: '3', words: 'Three' },
  { value: '4', words: 'Four' },
] as const;
type Count = (typeof COUNTS)[number]['value'];
const NOUN: Readonly<Record<Count, string>> = { '2': 'a pair', '3': 'three', '4': 'four' };

/** Places several detectors side by side with one press: where they have the largest margin, or beside an existing detector. */
export function SideBySide() {
  const [count, setCount] = useState<Count>('2');
  const [onFurniture, setOnFurniture] = useState(false);
  const best = useBestPlaces('group', { members: Number(count), count: 1, onFurniture });
  const { detectors } = useLevel();
  const selection = useAppStore((state) => state.selection);
  const chosen = detectors.find(({ id }) => selection.includes(id));
  const beside = chosen ? besideIt(detectors, chosen) : [];
  const [first] = useDescribedPlaces(best, beside.length === Number(count) ? beside : []);
  const lit = useShown(({ group }) => group !== null);
  const plan = useAppStore((state) => state.plan);
  const bar = useAppStore(selectLevelBar);
  const levelId = useLevel().id;
  const place = first?.place;
  const light = () => {
    if (!first) return;
    const { radius } = best.wanted.probe;
    const { place, words } = first;
    useShown.setState({ levelId, group: { name: `${count}×`, axes: place.axes, radius, limit: words.limit } });
  };
  // biome-ignore lint/correctness/useExhaustiveDependencies: another place is shown only once somebody looks at it
  useEffect(() => () => useShown.setState({ group: null }), [place]);
  if (bar) return null;
  return (
    <section className="spots" aria-labelledby="side-by-side-heading">
      <h3 id="side-by-side-heading">Side by side</h3>
      <ChoiceField label="How many" value={count} choices={COUNTS} hint={gapWords(plan)} onCommit={setCount} />
      <button type="button" className="button" aria-pressed={onFurniture} onClick={() => setOnFurniture(!onFurniture)}>
        On one piece of furniture first
      </button>
      {first ? (
        <PlaceRow name={`${count}×`} words={first.words} lit={lit} onLight={light} />
      ) : (
        <p>
          {best.settled ? `No place for ${NOUN[count]} on this level at this height.` : 'Looking for the best place…'}
        </p>
      )}
      {place && !place.mutual && (
        <p className="fine soft">
          They are in a row. Only neighbors are at the distance of a pair, so they are marked two by two.
        </p>
      )}
      <Actions best={best} count={count} chosen={chosen} beside={beside} />
    </section>
  );
}

interface ActionProps {
  readonly best: Best;
  readonly count: Count;
  /** The selected detector. `beside` has all detectors of its pair. */
  readonly chosen: Detector | undefined;
  readonly beside: readonly Detector[];
}

function Actions({ best, count, chosen, beside }: ActionProps) {
  const { places, wanted } = best;
  const [place] = places;
  const others = Number(count) - 1;
  const action = (set: () => void) => () => {
    useShown.setState({ group: null });
    set();
  };
  return (
    <div className="buttons">
      {place && (
        <button type="button" className="button button--main" onClick={action(() => setPlace(place, wanted.probe))}>
          Set {NOUN[count]} side by side
        </button>
      )}
      {chosen && beside.length === 1 && (
        <button type="button" className="button" onClick={() => addCompanion(chosen.id, others)}>
          {others === 1 ? `Place ${nameOf(chosen)} its companion` : `Place ${others} more beside ${nameOf(chosen)}`}
        </button>
      )}
      {place && beside.length === Number(count) && (
        <button type="button" className="button" onClick={action(() => moveToPlace(beside, place, wanted.probe))}>
          Move {beside.map(nameOf).join(' and ')} there
        </button>
      )}
    </div>
  );
}

/** Returns the detectors of the same pair as this one, including it. */
function besideIt(detectors: readonly Detector[], chosen: Detector): readonly Detector[] {
  return chosen.pair === null ? [chosen] : detectors.filter(({ pair }) => pair === chosen.pair);
}

function nameOf({ label }: Detector): string {
  return label.trim() || 'it';
}
