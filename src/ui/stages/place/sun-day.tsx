import { useEffect, useMemo, useState } from 'react';
import { formatInstant } from '../../../protocol/timing/format-time.ts';
import { modelOf, selectLevelAtRest, selectProbeAtRest } from '../../../state/selectors.ts';
import { useShown } from '../../../state/shown.ts';
import { useAppStore } from '../../../state/store.ts';
import { type SunDays, sunAtMoment, sunDays, sunOfDays } from '../../../state/sun-day.ts';
import './sun-day.css';

/** Time between two moments while the day is played, ms. */
const FRAME_MS = 120;

/** Returns the days that are played: those of the test, or from now on; null if an entry for them is missing. */
export function useSunDays(): SunDays | null {
  const plan = useAppStore((state) => state.plan);
  const [now] = useState(() => Date.now());
  return useMemo(() => sunDays(plan, now), [plan, now]);
}

/** The played day below the plan, for a phone, where the panel would cover the plan. */
export function DayBelowPlan() {
  const days = useSunDays();
  if (!days) return null;
  return (
    <section className="day-below" aria-label="Sun over the day">
      <Day days={days} />
      <button type="button" className="button" onClick={() => useShown.setState({ playsDay: false })}>
        Hide the sun
      </button>
    </section>
  );
}

/** A slider over the hours with sun, which shows the sunlit floor at that time. */
export function Day({ days: { times, isAssumed, moments } }: { readonly days: SunDays }) {
  const zone = useAppStore((state) => state.plan.site.timeZone);
  const model = useAppStore((state) => modelOf(selectLevelAtRest(state)));
  const { base, tall } = useAppStore(selectProbeAtRest);
  // All assumed days at first, because the shaded zones of the plan do not include them.
  const at = useShown(({ dayMoment }) => dayMoment) ?? (isAssumed ? -1 : Math.floor(moments.length / 2));
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
  useEffect(() => () => useShown.setState({ sun: null }), []);
  useEffect(() => {
    if (!isPlaying) return;
    const timer = setTimeout(() => useShown.setState({ dayMoment: (at + 1) % moments.length }), FRAME_MS);
    return () => clearTimeout(timer);
  }, [isPlaying, moments.length, at]);
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
          useShown.setState({ dayMoment: event.currentTarget.valueAsNumber });
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
