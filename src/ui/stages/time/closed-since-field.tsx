import type { Visit } from '../../../../geometry/plan/test-record.ts';
import { InstantField } from '../../fields/instant-field.tsx';

interface Props {
  readonly visit: Visit;
  /** IANA zone of the site. */
  readonly zone: string;
  /** Returns why not, in words; empty when it did. */
  readonly onCommit: (value: string | null) => string;
}

/** Since when the house is closed, or when it is planned to be. */
export function ClosedSinceField({ visit, zone, onCommit }: Props) {
  return (
    <InstantField
      label="Closed-building conditions since"
      hint="All windows and exterior doors, on all levels."
      value={visit.closedSince}
      zone={zone}
      onCommit={onCommit}
    />
  );
}
