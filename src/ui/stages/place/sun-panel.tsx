import { useEffect, useState } from 'react';
import { formatArea } from '../../../../geometry/units/index.ts';
import { type SunTake, sunWindowSteps } from '../../../advice/sun-windows.ts';
import { NO_CLOUDS, NO_SKYLIGHTS } from '../../../advice/sun-words.ts';
import { coverOpenings } from '../../../commands/cover-openings.ts';
import { usePanels } from '../../../commands/panels.ts';
import { atLeisure } from '../../../state/at-leisure.ts';
import { modelOf, selectLevelAtRest, selectProbeAtRest } from '../../../state/selectors.ts';
import { useShown } from '../../../state/shown.ts';
import { useAppStore } from '../../../state/store.ts';
import { Day, useSunDays } from './sun-day.tsx';
import './spots.css';

/** Maximum number of listed openings, the largest excluded area first. */
const MOST_LISTED = 4;
/** A smaller area counts as none, mm²: a tenth of a square foot. */
const NOTHING = 10_000;

/** Direct sun: the openings that exclude the most area, and the day played on the plan. */
export function SunPanel() {
  const days = useSunDays();
  const isOn = useShown(({ playsDay }) => playsDay);
  const inView = usePanels(({ stage }) => stage === 'place');
  return (
    <section className="sun" aria-labelledby="sun-heading">
      <h3 id="sun-heading">Where does the sun fall?</h3>
      {days ? (
        <>
          {!days.isAssumed && inView && <Takes />}
          <button
            type="button"
            className="button"
            aria-pressed={isOn}
            onClick={() => useShown.setState({ playsDay: !isOn })}
          >
            {days.isAssumed ? 'Show a test from now on' : 'Play the day on the plan'}
          </button>
          {isOn && inView && <Day days={days} />}
          <p className="fine soft">
            {NO_CLOUDS} {NO_SKYLIGHTS}
          </p>
        </>
      ) : (
        <p className="fine soft">
          It is worked out from the location of the house, north and the times of the test. Something of it is missing.
        </p>
      )}
    </section>
  );
}

/** The area that direct sun through each opening excludes, and what is gained by covering it. */
function Takes() {
  const take = useTake();
  const unit = useAppStore((state) => state.plan.display.length);
  if (!take) return null;
  const taking = take.windows.filter(({ back }) => back > NOTHING).slice(0, MOST_LISTED);
  const [most] = taking;
  const ids = take.windows.map(({ id }) => id);
  const all = ids.length > 1 && take.all > NOTHING && (
    <button type="button" className="button" onClick={() => coverOpenings(ids)}>
      Keep all {ids.length} covered: {formatArea(take.all, unit)} more
    </button>
  );
  if (!most) return all || <p>Direct sun takes nothing of the allowed area.</p>;
  return (
    <>
      <p>
        {taking.length > 1 ? `Most is taken by ${most.name}. ` : ''}Allowed now: {formatArea(take.allowed, unit)}.
      </p>
      <ul className="sun__takes" aria-label="What keeping an opening covered gives back">
        {taking.map(({ id, name, back }) => (
          <li key={id}>
            <button type="button" className="button" onClick={() => coverOpenings([id])}>
              Keep {name} covered: {formatArea(back, unit)} more
            </button>
          </li>
        ))}
      </ul>
      {all}
      <p className="fine soft">Covered stays covered for the whole test, and the notice to the people asks for it.</p>
    </>
  );
}

function useTake(): SunTake | null {
  const plan = useAppStore((state) => state.plan);
  const model = useAppStore((state) => modelOf(selectLevelAtRest(state)));
  const probe = useAppStore(selectProbeAtRest);
  const [found, setFound] = useState<SunTake | null>(null);
  useEffect(() => {
    let isWanted = true;
    void atLeisure(sunWindowSteps(plan, model, probe), () => isWanted).then((take) => {
      if (isWanted) setFound(take);
    });
    return () => {
      isWanted = false;
    };
  }, [plan, model, probe]);
  return found;
}
