import type { Plan } from '../../../../geometry/plan/model.ts';
import { chainOf } from '../../../protocol/custody/chain.ts';
import { listDetectors, type NamedDetector } from '../../../protocol/custody/detectors.ts';
import { MINUTE } from '../../../protocol/timing/clock.ts';
import { useMinute } from '../../hooks/use-minute.ts';

interface Props {
  readonly plan: Plan;
  readonly all: readonly NamedDetector[];
}

/** Who has the detectors now, with one line for each holder; and whether the log contradicts itself. */
export function WhoHasIt({ plan, all }: Props) {
  // One minute later, so that entries made within the current minute count as past.
  const clock = useMinute() + MINUTE;
  const places = new Map<string, NamedDetector[]>();
  const doubtful: NamedDetector[] = [];
  for (const detector of all) {
    const chain = chainOf(plan, detector.id, clock);
    places.set(chain.currentHolder, [...(places.get(chain.currentHolder) ?? []), detector]);
    if (chain.hasDiscrepancies) doubtful.push(detector);
  }
  return (
    <div className="log__now">
      <strong className="small">Where they are now</strong>
      {[...places].map(([now, some]) => (
        <p key={now}>
          {listDetectors(some, all)}: <strong>{now || 'not placed yet'}</strong>.
        </p>
      ))}
      {doubtful.length > 0 && (
        <p className="log__doubt">
          {listDetectors(doubtful, all)}: times or transfers do not fit together. See the log of each.
        </p>
      )}
    </div>
  );
}
