import type { Plan } from '../../../geometry/plan/model.ts';
import type { LogEntry } from '../../../geometry/plan/test-record.ts';
import { type Ms, msOf } from '../timing/clock.ts';
import { formatInstant } from '../timing/format-time.ts';
import { stepDiscrepancies } from './chain-discrepancies.ts';
import {
  type Chain,
  type ChainStep,
  HOUSE,
  LABORATORY,
  POST,
  type StepKind,
  type UncheckedStep,
} from './chain-types.ts';
import { logEntryOf } from './log-entries.ts';
import { recordedStart } from './placed.ts';

/** Order of steps at the same instant. */
const ORDER: readonly StepKind[] = ['set-out', 'fetched', 'sealed', 'hand-over', 'posted', 'received'];

/**
 * Returns the chain of custody of a detector. Placement, pick-up, mailing and receipt are taken from the visit, seal and hand-overs from
 * the detector's log. Nothing is corrected: contradictions are listed with their step.
 * @param now ms: `currentHolder` follows from the steps until then
 */
export function chainOf(plan: Plan, detector: string, now: Ms = Number.POSITIVE_INFINITY): Chain {
  const entry = logEntryOf(plan, detector);
  const ordered = chronologicalSteps(plan, entry);
  let holder = '';
  const steps = ordered.map((step): ChainStep => {
    const discrepancies = stepDiscrepancies(plan, entry, step, holder);
    const from = step.kind === 'posted' || step.kind === 'received' ? holder : step.from;
    if (step.kind !== 'sealed') holder = step.to;
    return { ...step, from, discrepancies };
  });
  return {
    steps,
    currentHolder: describeCurrentHolder(
      steps.filter(({ at }) => at === null || at <= now),
      plan.site.timeZone,
    ),
    hasDiscrepancies: steps.some(({ discrepancies }) => discrepancies.length > 0),
  };
}

/** Returns the name of the current holder, with whom a hand-over can start; empty if it is not recorded. */
export function holderOf(plan: Plan, detector: string): string {
  return chainOf(plan, detector).steps.findLast(({ kind }) => kind !== 'sealed')?.to ?? '';
}

function chronologicalSteps(
  { visit }: Plan,
  { placedBy, fetchedBy, sealed, custody }: LogEntry,
): readonly UncheckedStep[] {
  const step = (kind: StepKind, at: Ms | null, change: Partial<UncheckedStep> = {}): UncheckedStep => {
    return { kind, at, from: '', to: '', note: '', index: null, ...change };
  };
  const [start, end, shut] = [msOf(recordedStart(visit)), msOf(visit.end), msOf(sealed)];
  const [posted, received] = [msOf(visit.posted), msOf(visit.received)];
  const known: readonly UncheckedStep[] = [
    ...(start === null && !placedBy.trim() ? [] : [step('set-out', start, { from: placedBy.trim(), to: HOUSE })]),
    ...(end === null && !fetchedBy.trim() ? [] : [step('fetched', end, { from: HOUSE, to: fetchedBy.trim() })]),
    ...(shut === null ? [] : [step('sealed', shut)]),
    ...custody.map(({ at, from, to, note }, index) =>
      step('hand-over', msOf(at), { from: from.trim(), to: to.trim(), note: note.trim(), index }),
    ),
    ...(posted === null ? [] : [step('posted', posted, { to: POST })]),
    ...(received === null ? [] : [step('received', received, { to: LABORATORY })]),
  ];
  // A step without a time takes that of the step recorded before it.
  let reached = Number.NEGATIVE_INFINITY;
  return known
    .map((each) => {
      reached = each.at ?? reached;
      return { each, at: reached };
    })
    .toSorted((a, b) => compareInstants(a.at, b.at) || ORDER.indexOf(a.each.kind) - ORDER.indexOf(b.each.kind))
    .map(({ each }) => each);
}

/** Two unknown instants are equal: the difference of infinities is not a number. */
const compareInstants = (a: Ms, b: Ms): number => (a === b ? 0 : a - b);

function describeCurrentHolder(steps: readonly ChainStep[], zone: string): string {
  const last = steps.findLast(({ kind }) => kind !== 'sealed');
  if (!last) return '';
  const since = last.at === null ? '' : `, since ${formatInstant(last.at, zone)}`;
  if (!last.to) return `picked up${since.replace('since ', '')}; by whom is not recorded`;
  return `${last.to === HOUSE ? 'in' : 'with'} ${last.to}${since}`;
}
