import type { Plan } from '../../../geometry/plan/model.ts';
import { visitTimes } from './checks.ts';
import { DAY, HOUR, type Ms } from './clock.ts';
import { CLOSED_BEFORE, MITIGATION_BEFORE } from './limits.ts';

/** A bar of the timeline: what happens from when to when, beside what is needed. */
export interface TimelineBar {
  readonly name: string;
  readonly from: Ms;
  readonly to: Ms;
  /** Needed: a limit; done: what was written down; open: the kit's window. */
  readonly kind: 'needed' | 'done' | 'open';
}

export interface Timeline {
  readonly from: Ms;
  readonly to: Ms;
  readonly bars: readonly TimelineBar[];
}

/** The visit as bars on one scale, or null while the start is not known. */
export function timelineOf(plan: Plan): Timeline | null {
  const { start, end, closed, mitigation, received } = visitTimes(plan);
  if (start === null) return null;
  const { kit } = plan;
  const fetched = end ?? start + kit.minimumHours * HOUR;
  const bars: TimelineBar[] = [
    { name: 'Closed before, needed', from: start - CLOSED_BEFORE.duration, to: start, kind: 'needed' },
    ...(closed === null || closed >= fetched
      ? []
      : [{ name: 'House closed', from: closed, to: fetched, kind: 'done' } as const]),
    ...(mitigation === null
      ? []
      : [
          {
            name: 'System on before, needed',
            from: start - MITIGATION_BEFORE.duration,
            to: start,
            kind: 'needed',
          } as const,
          { name: 'System on', from: Math.min(mitigation, start), to: fetched, kind: 'done' } as const,
        ]),
    {
      name: 'May be fetched',
      from: start + kit.minimumHours * HOUR,
      to: start + kit.maximumHours * HOUR,
      kind: 'open',
    },
    ...(end === null ? [] : [{ name: 'Laid out', from: start, to: end, kind: 'done' } as const]),
    { name: 'To the laboratory', from: fetched, to: fetched + kit.labDays * DAY, kind: 'open' },
    ...(received === null || end === null || received < end
      ? []
      : [{ name: 'On its way', from: end, to: received, kind: 'done' } as const]),
  ];
  return {
    from: Math.min(...bars.map((bar) => bar.from)),
    to: Math.max(...bars.map((bar) => bar.to)),
    bars,
  };
}
