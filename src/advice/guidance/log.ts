import { counted, listed } from '../../../geometry/messages/index.ts';
import type { Plan } from '../../../geometry/plan/model.ts';
import { chainOf } from '../../protocol/custody/chain.ts';
import { namedDetectors } from '../../protocol/custody/detectors.ts';
import { logEntryOf } from '../../protocol/custody/log-entries.ts';
import { duplicateSerials, missingRecords } from '../../protocol/custody/missing-records.ts';
import { type Hint, type SeenLevel, WEIGHT } from './hint.ts';
import { hasDetectors } from './time.ts';

/** Once the detectors are set out: what their log lacks. A gap is never "missing": a result stands without it, its paper does not. What contradicts itself is: a chain that does not fit, a number that stands twice. */
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

/** Returns how many detectors have their number, in a few words; empty for none. */
export function logInWords(plan: Plan): string {
  const all = namedDetectors(plan);
  const numbered = all.filter(({ id }) => logEntryOf(plan, id).serial.trim() !== '').length;
  return numbered === 0 ? '' : `${numbered} of ${counted(all.length, 'serial number')}.`;
}
