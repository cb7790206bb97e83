import { listed } from '../../../geometry/messages/index.ts';
import type { Plan } from '../../../geometry/plan/model.ts';
import type { LogEntry } from '../../../geometry/plan/test-record.ts';
import { msOf } from '../timing/clock.ts';
import { formatDuration } from '../timing/format-time.ts';
import { chainOf } from './chain.ts';
import type { Chain, ChainStep } from './chain-types.ts';
import { type NamedDetector, namedDetectors } from './detectors.ts';

/** Returns the chains of a plan, each once, with the detectors that share it. */
function sharedChains(plan: Plan): readonly { readonly detectors: readonly NamedDetector[]; readonly chain: Chain }[] {
  const groups = new Map<string, { detectors: NamedDetector[]; chain: Chain }>();
  for (const detector of namedDetectors(plan)) {
    const chain = chainOf(plan, detector.id);
    const key = JSON.stringify(chain);
    const group = groups.get(key);
    if (group) group.detectors.push(detector);
    else groups.set(key, { detectors: [detector], chain });
  }
  return [...groups.values()];
}

/** A contradiction in a chain, with its detectors. */
export interface ChainDiscrepancy {
  /** Ids of the detectors. */
  readonly detectors: readonly string[];
  readonly text: string;
}

/** Returns every contradiction, one per step. */
export function chainDiscrepancies(plan: Plan): readonly ChainDiscrepancy[] {
  return sharedChains(plan).flatMap(({ detectors, chain }) =>
    chain.steps
      .filter(({ discrepancies }) => discrepancies.length > 0)
      .map((step) => ({
        detectors: detectors.map(({ id }) => id),
        text: `${listed(detectors.map(({ name }) => name))}, ${describeStep(step)}: ${step.discrepancies.join(' ')}`,
      })),
  );
}

/** Returns what happened in a step, without its time: "Bo Reed to the office". */
export function describeStep({ kind, from, to }: ChainStep): string {
  switch (kind) {
    case 'set-out':
      return from ? `Placed by ${from}` : 'Placed';
    case 'fetched':
      return to ? `Picked up by ${to}` : 'Picked up';
    case 'sealed':
      return 'Sealed';
    case 'hand-over':
      return `${from || 'Not known who'} to ${to || 'no name recorded'}`;
    case 'posted':
      return 'Mailed';
    case 'received':
      return 'At the laboratory';
  }
}

/** Returns how long after the pick-up a detector was sealed, in words; empty if a time is unknown or the times contradict each other. */
export function describeTimeToSeal({ visit }: Plan, { sealed }: LogEntry): string {
  const [end, at] = [msOf(visit.end), msOf(sealed)];
  if (end === null || at === null || at < end) return '';
  return at === end ? 'At the pick-up.' : `${formatDuration(at - end)} after the pick-up.`;
}
