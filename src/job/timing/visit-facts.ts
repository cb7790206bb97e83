import type { Kit, Plan } from '../../../geometry/plan/model.ts';

/** What the next date of a test hangs on. A few plain values, so that a list of plans knows it without the plans. */
export interface VisitFacts {
  /** IANA zone of the site. */
  readonly zone: string;
  readonly kit: Pick<Kit, 'minimumHours' | 'maximumHours' | 'labDays'>;
  readonly posted: string | null;
  readonly received: string | null;
  /** Read on site: nothing goes to a laboratory. */
  readonly monitor: boolean;
  /** Whether a result is in. */
  readonly read: boolean;
}

export function visitFacts({ site, kit, visit, readings }: Plan): VisitFacts {
  const { minimumHours, maximumHours, labDays } = kit;
  return {
    zone: site.timeZone,
    kit: { minimumHours, maximumHours, labDays },
    posted: visit.posted ?? null,
    received: visit.received ?? null,
    monitor: visit.device === 'monitor',
    read: readings.length > 0,
  };
}
