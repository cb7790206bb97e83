import { useEffect, useMemo, useState } from 'react';
import { formatArea } from '../../../../geometry/units/index.ts';
import { type SunTake, sunWindowSteps } from '../../../advice/sun-windows.ts';
import { NO_CLOUDS, NO_SKYLIGHTS } from '../../../advice/sun-words.ts';
import { coverOpenings } from '../../../commands/cover-openings.ts';
import { usePanels } from '../../../commands/panels.ts';
import { formatInstant } from '../../../protocol/timing/format-time.ts';
import { atLeisure } from '../../../state/at-leisure.ts';
import { modelOf, selectLevelAtRest, selectProbeAtRest } from '../../../state/selectors.ts';
import { useShown } from '../../../state/shown.ts';
import { useAppStore } from '../../../state/store.ts';
import { type SunDays, sunAtMoment, sunDays, sunOfDays } from '../../../state/sun-day.ts';
import './spots.css';

/** Time between two pictures of the day that plays, ms. */
const FRAME_MS = 120;
/** Openings that are listed at most, what takes most first. */
const MOST_LISTED = 4;
/** An area below this is none, mm²: a tenth of a square foot. */
const NOTHING = 10_000;

/** Where direct sun falls: what lets most of it in, and the day played on the plan. */
export function SunPanel() {
  const plan = useAppStore((state) => state.plan);
  const [now] = useState(() => Date.now());
  const days = useMemo(() => sunDays(plan, now), [plan, now]);
  const [isOn, setOn] = useState(kept.isOn);
  const turn = (on: boolean) => {
    kept.isOn = on;
    setOn(on);
  };
  const inView = usePanels(({ stage }) => stage === 'place');
  return (
    <section className="sun" aria-labelledby="sun-heading">
      <h3 id="sun-heading">Where does the sun fall?</h3>
      {days ? (
        <>
          {!days.isAssumed && inView && <Takes />}
          <button type="button" className="button" aria-pressed={isOn} onClick={() => turn(!isOn)}>
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

/** What stays while the panel is folded, as on a phone, where it covers the plan. */
const kept = { isOn: false, at: null as number | null, stop: () => {} };

/** Takes the sun off the plan; folded away, it stays until anything that it depends on changes. */
function leave(): void {
  const clear = () => useShown.setState({ sun: null });
  if (!usePanels.getState().jobFolded) {
    clear();
    return;
  }
  kept.stop = useAppStore.subscribe((now, before) => {
    if (
      now.plan === before.plan &&
      now.levelId === before.levelId &&
      selectProbeAtRest(now) === selectProbeAtRest(before)
    )
      return;
    kept.stop();
    clear();
  });
}

/** What each opening takes from the allowed area, and what keeping it covered gives back. */
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

/** A slider over the hours with sun, and the floor that is lit then. */
function Day({ days: { times, isAssumed, moments } }: { readonly days: SunDays }) {
  const zone = useAppStore((state) => state.plan.site.timeZone);
  const model = useAppStore((state) => modelOf(selectLevelAtRest(state)));
  const { base, tall } = useAppStore(selectProbeAtRest);
  // The whole of the assumed days first: no zone of the plan shows them.
  const [at, setAt] = useState(kept.at ?? (isAssumed ? -1 : Math.floor(moments.length / 2)));
  useEffect(() => {
    kept.at = at;
  }, [at]);
  const [isPlaying, setPlaying] = useState(false);
  const moment = moments[Math.min(at, moments.length - 1)];
  const rings = useMemo(
    () =>
      moment === undefined
        ? sunOfDays(model, times, { base, tall })
        : sunAtMoment(model, times, { base, tall }, moment),
    [model, times, base, tall, moment],
  );
  useEffect(() => useShown.setState({ sun: rings }), [rings]);
  useEffect(() => {
    kept.stop();
    return leave;
  }, []);
  useEffect(() => {
    if (!isPlaying) return;
    const timer = setInterval(() => setAt((before) => (before + 1) % moments.length), FRAME_MS);
    return () => clearInterval(timer);
  }, [isPlaying, moments.length]);
  if (moments.length === 0) return <p>The sun does not rise high enough on these days.</p>;
  const words = moment === undefined ? 'All of these days' : formatInstant(moment, zone);
  return (
    <div className="sun__day">
      {isAssumed && (
        <p>
          No times are planned. Assumed: {formatInstant(times.start, zone)} to {formatInstant(times.end, zone)}. No
          verdict counts it.
        </p>
      )}
      <input
        type="range"
        aria-label="Time of the day that is played"
        aria-valuetext={words}
        min={0}
        max={moments.length - 1}
        step={1}
        value={Math.max(0, at)}
        onChange={(event) => {
          setPlaying(false);
          setAt(event.currentTarget.valueAsNumber);
        }}
      />
      <p className="sun__moment">
        <strong>{words}</strong>
        {rings.length === 0 ? ': no direct sun comes in.' : ''}
      </p>
      <button type="button" className="button" aria-pressed={isPlaying} onClick={() => setPlaying(!isPlaying)}>
        {isPlaying ? 'Stop' : 'Play'}
      </button>
    </div>
  );
}
