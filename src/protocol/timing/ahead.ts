import { listed } from '../../../geometry/messages/index.ts';
import type { Plan } from '../../../geometry/plan/model.ts';
import type { ValidityIssue } from '../validity/validity.ts';
import { type Ms, msOf } from './clock.ts';
import { formatInstant } from './format-time.ts';

/** An event of a plan that is recorded as having happened. */
interface RecordedEvent {
  readonly name: string;
  readonly at: Ms;
  /** The stage in which its time is corrected. */
  readonly stage: 'time' | 'house' | 'log';
}

/** Returns every event that is recorded with a time, except placement and the closing of the house, which may be planned. */
export function recordedEvents({ visit, conditions, log = [] }: Plan): readonly RecordedEvent[] {
  const at = (stage: RecordedEvent['stage'], name: string, text: string | null | undefined) => {
    const ms = msOf(text);
    return ms === null ? [] : [{ stage, name, at: ms }];
  };
  return [
    ...at('time', 'Picked up', visit.end),
    ...at('time', 'House opened again', visit.closedUntil),
    ...at('time', 'Mailed', visit.posted),
    ...at('time', 'At the laboratory', visit.received),
    ...conditions.flatMap((each) => at('house', 'Verified on', each.at)),
    ...log.flatMap(({ sealed, custody }) => [
      ...at('log', 'Sealed', sealed),
      ...custody.flatMap((step) => at('log', 'Transferred', step.at)),
    ]),
  ];
}

/** Returns an issue for each stage with events that are recorded for later than `now`: they have not happened, so they are not known. */
export function aheadIssues(plan: Plan, now: Ms): readonly ValidityIssue[] {
  const ahead = recordedEvents(plan).filter(({ at }) => at > now);
  return [...new Set(ahead.map(({ stage }) => stage))].map((stage): ValidityIssue => {
    const events = ahead
      .filter((event) => event.stage === stage)
      .map(({ name, at }) => `"${name}" (${formatInstant(at, plan.site.timeZone, { year: true })})`);
    const text = `Recorded for later than now, and not known before then: ${listed([...new Set(events)])}.`;
    return { validity: 'unknown', stage, text, detectors: null };
  });
}

/**
 * Returns the plan as it is known at `now`: a pick-up recorded for later is only planned, mailing and delivery for later are not known.
 * Returns the plan itself if none of them is later.
 */
export function asKnownAt(plan: Plan, now: Ms): Plan {
  const { visit } = plan;
  const isAhead = (text: string | null | undefined) => (msOf(text) ?? now) > now;
  const [end, posted, received] = [isAhead(visit.end), isAhead(visit.posted), isAhead(visit.received)];
  if (!end && !posted && !received) return plan;
  return {
    ...plan,
    visit: {
      ...visit,
      ...(end ? { end: null, plannedEnd: visit.end } : {}),
      ...(posted ? { posted: null } : {}),
      ...(received ? { received: null } : {}),
    },
  };
}
