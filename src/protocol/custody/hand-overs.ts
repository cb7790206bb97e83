import type { Plan } from '../../../geometry/plan/model.ts';
import type { Custody } from '../../../geometry/plan/test-record.ts';
import { holderOf } from './chain.ts';
import { type NamedDetector, namedDetectors } from './detectors.ts';
import { logEntryOf, withHandOver, withLogEntry } from './log-entries.ts';

/** Returns the plan with one hand-over of several detectors; without `from`, each starts from its current holder. */
export function withHandOvers(
  plan: Plan,
  detectors: readonly string[],
  { at, from, to, note }: { at: string | null; from: string | null; to: string; note: string },
): Plan {
  return detectors.reduce((now, id) => withHandOver(now, id, { at, from: from ?? holderOf(now, id), to, note }), plan);
}

/** Returns the detectors whose log has this hand-over: those that were handed over together. */
export function detectorsOfHandOver(plan: Plan, step: Custody): readonly NamedDetector[] {
  return namedDetectors(plan).filter(({ id }) => logEntryOf(plan, id).custody.some((each) => sameHandOver(each, step)));
}

/** Returns the plan without that hand-over in the logs of these detectors. */
export function withoutHandOver(plan: Plan, detectors: readonly NamedDetector[], step: Custody): Plan {
  return detectors.reduce((now, { id }) => {
    const { custody } = logEntryOf(now, id);
    const gone = custody.findIndex((each) => sameHandOver(each, step));
    return gone < 0 ? now : withLogEntry(now, id, { custody: custody.filter((_, i) => i !== gone) });
  }, plan);
}

/** `from` may differ: detectors handed over together may have had different holders. */
const sameHandOver = (a: Custody, b: Custody): boolean => a.at === b.at && a.to === b.to && a.note === b.note;
