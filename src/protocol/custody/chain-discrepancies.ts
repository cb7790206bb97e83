import type { Plan } from '../../../geometry/plan/model.ts';
import type { LogEntry } from '../../../geometry/plan/test-record.ts';
import { type Ms, msOf } from '../timing/clock.ts';
import { formatInstant } from '../timing/format-time.ts';
import { LABORATORY, type UncheckedStep } from './chain-types.ts';
import { isSameHolder } from './holder-names.ts';
import { recordedStart } from './placed.ts';

/**
 * Returns sentences on contradictions between a step and the times of the visit, the other steps, or `holder`, who had the detector before.
 */
export function stepDiscrepancies(plan: Plan, entry: LogEntry, step: UncheckedStep, holder: string): readonly string[] {
  const { visit, site } = plan;
  const format = (at: Ms) => formatInstant(at, site.timeZone);
  const [start, end] = [msOf(recordedStart(visit)), msOf(visit.end)];
  const [posted, received] = [msOf(visit.posted), msOf(visit.received)];
  const { at, kind } = step;
  const before = (other: Ms | null): other is Ms => at !== null && other !== null && at < other;
  const after = (other: Ms | null): other is Ms => at !== null && other !== null && at > other;
  const earlier = (what: string, other: Ms | null) =>
    before(other) ? [`${what}, ${format(other)}. Review both times.`] : [];
  const tooLate = after(received) ? [`After the laboratory received it, ${format(received)}. Review both times.`] : [];
  const early = before(start) ? earlier('Before it was placed', start) : earlier('Before the pick-up', end);
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
        ...(gone ? [`It was transferred before, ${format(gone)}. Review both times.`] : []),
      ];
    }
    case 'hand-over': {
      const later = entry.custody
        .slice(0, step.index ?? 0)
        .map((each) => msOf(each.at))
        .find(before);
      return [
        ...early,
        ...(later ? [`Earlier than the transfer recorded before it, ${format(later)}. Review both times.`] : []),
        ...tooLate,
        ...(at === null ? ['Its time is not recorded.'] : []),
        ...(end === null ? ['When it was picked up is not recorded.'] : []),
        ...holderMismatch(step.from, holder),
      ];
    }
    case 'posted':
      return [
        ...early,
        ...(before(msOf(entry.sealed)) ? ['Mailed before it was sealed. Review both times.'] : []),
        ...(isSameHolder(holder, LABORATORY) ? ['The laboratory had received it by then.'] : []),
      ];
    case 'received':
      return [...early, ...earlier('Before it was mailed', posted)];
  }
}

function holderMismatch(from: string, holder: string): readonly string[] {
  if (!from) return ['Who gave it is not recorded.'];
  if (!holder || isSameHolder(from, holder)) return [];
  return [`According to the log ${holder} had it, not ${from}.`];
}
