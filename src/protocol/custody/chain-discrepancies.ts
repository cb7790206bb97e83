import type { Plan } from '../../../geometry/plan/model.ts';
import type { LogEntry } from '../../../geometry/plan/test-record.ts';
import { type Ms, msOf } from '../timing/clock.ts';
import { formatInstant } from '../timing/format-time.ts';
import { LABORATORY, type UncheckedStep } from './chain-types.ts';

/**
 * Returns sentences on what in a step contradicts the times of the visit, the other steps, or `holder`, who has the detector before it.
 */
export function stepDiscrepancies(plan: Plan, entry: LogEntry, step: UncheckedStep, holder: string): readonly string[] {
  const { visit, site } = plan;
  const format = (at: Ms) => formatInstant(at, site.timeZone);
  const [start, end] = [msOf(visit.start), msOf(visit.end)];
  const [posted, received] = [msOf(visit.posted), msOf(visit.received)];
  const { at, kind } = step;
  const before = (other: Ms | null): other is Ms => at !== null && other !== null && at < other;
  const after = (other: Ms | null): other is Ms => at !== null && other !== null && at > other;
  const earlier = (what: string, other: Ms | null) =>
    before(other) ? [`${what}, ${format(other)}. Look at both times.`] : [];
  const tooLate = after(received) ? [`After the laboratory had it, ${format(received)}. Look at both times.`] : [];
  const early = before(start) ? earlier('Before it was set out', start) : earlier('Before the pick-up', end);
  switch (kind) {
    case 'set-out':
    case 'fetched':
      return [];
    case 'sealed': {
      const gone = entry.custody
        .map((each) => msOf(each.at))
        .find((other) => after(other) && (end === null || other >= end));
      return [
        ...early,
        ...tooLate,
        ...(gone ? [`It had changed hands before, ${format(gone)}. Look at both times.`] : []),
      ];
    }
    case 'hand-over': {
      const later = entry.custody
        .slice(0, step.index ?? 0)
        .map((each) => msOf(each.at))
        .find(before);
      return [
        ...early,
        ...(later ? [`Earlier than the hand-over written before it, ${format(later)}. Look at both times.`] : []),
        ...tooLate,
        ...(at === null ? ['Its time is not written down.'] : []),
        ...(end === null ? ['When it was fetched is not written down.'] : []),
        ...holderMismatch(step.from, holder),
      ];
    }
    case 'posted':
      return [
        ...early,
        ...(before(msOf(entry.sealed)) ? ['Posted before it was sealed. Look at both times.'] : []),
        ...(isSameHolder(holder, LABORATORY) ? ['The laboratory had it by then.'] : []),
      ];
    case 'received':
      return [...early, ...earlier('Before it was posted', posted)];
  }
}

function holderMismatch(from: string, holder: string): readonly string[] {
  if (!from) return ['Who gave it is not written down.'];
  if (!holder || isSameHolder(from, holder)) return [];
  return [`By the log ${holder} had it, not ${from}.`];
}

/** Compares names as people write them: "post" and "the post office", "Laboratory" and "the lab". */
function isSameHolder(a: string, b: string): boolean {
  const plain = (name: string) => {
    const words = name.trim().toLowerCase().replaceAll(/\s+/g, ' ').replace(/^the /, '');
    return /^(?:post|lab)\b|^laborator/.exec(words)?.[0].slice(0, 3) ?? words;
  };
  return plain(a) === plain(b);
}
