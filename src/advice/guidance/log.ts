import { counted, listed } from '../../../geometry/messages/index.ts';
import type { Plan } from '../../../geometry/plan/model.ts';
import { chainOf } from '../../protocol/custody/chain.ts';
import { namedDetectors } from '../../protocol/custody/detectors.ts';
import { logEntryOf } from '../../protocol/custody/log-entries.ts';
import { duplicateSerials, missingRecords } from '../../protocol/custody/missing-records.ts';
import { type Hint, type SeenLevel, WEIGHT } from './hint.ts';
import { hasDetectors } from './time.ts';

/**
 * Returns hints about the log, once the start is set. A missing record is a remark only: the test is valid without it, the report is not
 * complete. Contradictions count as missing: in a chain of custody, or a serial number that occurs twice.
 */
export function logHints(plan: Plan, levels: readonly SeenLevel[]): readonly Hint[] {
  if (!hasDetectors(levels) || plan.visit.start === null) return [];
  const action = { kind: 'stage', label: 'Review the log', stage: 'log' } as const;
  const doubtful = namedDetectors(plan).filter(({ id }) => chainOf(plan, id).hasDiscrepancies);
  const hint = (text: string, missing: boolean): Hint => ({ text, action, missing, weight: WEIGHT.house });
  const repeated = duplicateSerials(plan);
  const [twice] = repeated;
  const gaps = missingRecords(plan).filter((words) => !repeated.includes(words));
  return [
    ...(doubtful.length > 0
      ? [
          hint(
            `Times or transfers in the chain of custody of ${listed(doubtful.map(({ name }) => name))} do not fit together.`,
            true,
          ),
        ]
      : []),
    ...(twice ? [hint(twice, true)] : []),
    ...gaps.map((words) => hint(words, false)),
  ];
}

/** Returns the number of detectors with a serial number, in a few words; empty for none. */
export function logInWords(plan: Plan): string {
  const all = namedDetectors(plan);
  const numbered = all.filter(({ id }) => logEntryOf(plan, id).serial.trim() !== '').length;
  return numbered === 0 ? '' : `${numbered} of ${counted(all.length, 'serial number')}.`;
}
