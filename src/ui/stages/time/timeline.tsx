import type { Plan } from '../../../../geometry/plan/model.ts';
import { wallTime } from '../../../protocol/timing/clock.ts';
import { formatDate, formatDuration, formatInstantNear } from '../../../protocol/timing/format-time.ts';
import { formatSpan, timelineOf } from '../../../protocol/timing/timeline.ts';

/** Maximum number of days with a number; the others have only a line. */
const NUMBERED = 8;
/** Percent of the width: a number further right would leave the picture. */
const LAST = 96;

/** The visit as bars on one scale: required, recorded and possible times, each with times and reason in words. */
export function TimelineView({ plan }: { readonly plan: Plan }) {
  const timeline = timelineOf(plan);
  if (!timeline) return null;
  const { from, to, bars, midnights, everyDays } = timeline;
  const share = (at: number) => Math.max(0, (100 * (at - from)) / (to - from));
  const { timeZone } = plan.site;
  const now = Date.now();
  const dated = (at: number) => formatInstantNear(at, timeZone, now);
  const step = Math.ceil(midnights.length / NUMBERED);
  // A line at the very end stays inside the picture.
  const lines = midnights.map((at) => (
    <i key={at} className="timeline__midnight" style={{ left: `min(${share(at)}%, 100% - 1px)` }} />
  ));
  return (
    <section className="visit" aria-labelledby="visit-heading">
      <h3 id="visit-heading">Timeline of the visit</h3>
      <p className="small soft">
        {dated(from)} to {dated(to)}. A line at {everyDays === 1 ? 'each midnight' : `one midnight in ${everyDays}`},
        with the day of the month.
      </p>
      <p className="timeline__days small" aria-hidden="true">
        {midnights.map((at, index) =>
          index % step === 0 && share(at) < LAST ? (
            <span key={at} style={{ left: `${share(at)}%` }}>
              {wallTime(at, timeZone).day}
            </span>
          ) : null,
        )}
      </p>
      <ul className="timeline">
        {bars.map((bar) => (
          <li key={bar.name} className="timeline__bar" data-kind={bar.kind}>
            <span>
              <strong>{bar.name}</strong>{' '}
              <span className="timeline__whole">
                {bar.from < from
                  ? `since ${formatDate(bar.from, timeZone, { year: true })}`
                  : formatDuration(bar.to - bar.from)}
              </span>
            </span>
            <span className="timeline__track" aria-hidden="true">
              {lines}
              <span className="timeline__span" style={placed(share(bar.from), share(bar.to))} />
            </span>
            <Span words={formatSpan(bar, timeZone, now)} />
            {bar.why && <span className="small soft">{bar.why}</span>}
          </li>
        ))}
      </ul>
    </section>
  );
}

/** Returns the style of a bar between two percentages of a track: at least 1% wide, and never beyond the end. */
function placed(from: number, to: number) {
  const width = Math.max(1, to - from);
  return { left: `${Math.min(from, 100 - width)}%`, width: `${width}%` };
}

/** A span of time that wraps only between its two ends. */
function Span({ words }: { readonly words: string }) {
  const [from, to] = words.split(' to ');
  return (
    <span className="small">
      <span className="timeline__whole">{from} to</span> <span className="timeline__whole">{to}</span>
    </span>
  );
}
