import { useMemo } from 'react';
import { capital, counted } from '../../../../geometry/messages/index.ts';
import { markedCite } from '../../../../geometry/messages/sources.ts';
import { type LevelLocations, testLocations } from '../../../../geometry/search/locations.ts';
import { formatArea, type LengthUnit } from '../../../../geometry/units/index.ts';
import { selectProbe } from '../../../state/selectors.ts';
import { useAppStore } from '../../../state/store.ts';
import './locations.css';

/** The levels to test, with the number of locations, and the rooms that are suitable. */
export function LocationFields() {
  // Uses the plan at rest: during a drag it would be computed for every level and frame.
  const plan = useAppStore((state) => state.plan);
  const probe = useAppStore(selectProbe);
  const { levels, areaEach, sources } = useMemo(() => testLocations(plan, probe), [plan, probe]);
  const unit = plan.display.length;
  const sorted = [...levels].sort((a, b) => a.level.order - b.level.order);
  return (
    <section className="locations" aria-labelledby="locations-heading">
      <h3 id="locations-heading">Where this house is tested</h3>
      <ul>
        {sorted.map((each) => (
          <LevelRow key={each.level.id} each={each} unit={unit} />
        ))}
      </ul>
      <p className="fine soft">
        {areaEach === null ? '' : `One location for each ${formatArea(areaEach, unit)} of a level. `}
        Source: {sources.map(markedCite).join('; ')}
      </p>
    </section>
  );
}

function LevelRow({ each, unit }: { readonly each: LevelLocations; readonly unit: LengthUnit }) {
  const { level, bar, needed, placed, missing, rooms } = each;
  return (
    <li className="location" data-missing={missing > 0 || undefined}>
      <strong>{level.name.trim() || 'No name'}</strong>
      {bar ? (
        <p className="soft">{capital(bar)}</p>
      ) : (
        <p>
          {counted(needed, 'location')} needed, {placed} placed{missing > 0 ? `: ${missing} missing` : ''}
        </p>
      )}
      {!bar && rooms.length > 0 && (
        <p className="soft">
          Room for one:{' '}
          {rooms
            .slice(0, 4)
            .map(({ room, area }) => `${room.label?.name.trim() || 'room without a name'} (${formatArea(area, unit)})`)
            .join(', ')}
          {rooms.length > 4 ? ` and ${rooms.length - 4} more` : ''}.
        </p>
      )}
    </li>
  );
}
