import type { Plan } from '../../../geometry/plan/model.ts';
import { saidDuration, saidInstant } from '../../job/timing/clock.ts';
import { timelineOf } from '../../job/timing/timeline.ts';

/** The visit as bars on one scale: what was needed, what was done, and the windows. In words for who does not see it. */
export function Timeline({ plan }: { readonly plan: Plan }) {
  const timeline = timelineOf(plan);
  if (!timeline) return null;
  const { from, to, bars } = timeline;
  const share = (at: number) => (100 * (at - from)) / (to - from);
  const { timeZone } = plan.site;
  return (
    <section aria-label="The visit in time">
      <ul className="timeline">
        {bars.map(({ name, from: start, to: end, kind }) => (
          <li key={name} className="timeline__bar" data-kind={kind}>
            <span className="small">
              {name} <span className="soft">{saidDuration(end - start)}</span>
            </span>
            <span className="timeline__track" aria-hidden="true">
              <span style={{ left: `${share(start)}%`, width: `${Math.max(1, share(end) - share(start))}%` }} />
            </span>
            <span className="unseen">
              from {saidInstant(start, timeZone)} to {saidInstant(end, timeZone)}
            </span>
          </li>
        ))}
      </ul>
      <p className="small soft timeline__ends">
        <span>{saidInstant(from, timeZone)}</span>
        <span>{saidInstant(to, timeZone)}</span>
      </p>
    </section>
  );
}
