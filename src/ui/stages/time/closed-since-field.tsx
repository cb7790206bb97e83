import type { Visit } from '../../../../geometry/plan/test-record.ts';
import { InstantField } from '../../fields/instant-field.tsx';

interface Props {
  readonly visit: Visit;
  /** IANA zone of the site. */
  readonly zone: string;
  /** Returns why the value was refused, in words; empty if it was stored. */
  readonly onCommit: (value: string | null) => string;
}

/** A field for the time since when the house is closed, or when that is planned. */
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
