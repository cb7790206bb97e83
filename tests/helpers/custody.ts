import type { Detector, Plan } from '../../geometry/plan/model.ts';
import type { LogEntry, Visit } from '../../geometry/plan/test-record.ts';
import { emptyPlan } from '../../geometry/planfile/empty.ts';
import { chainOf } from '../../src/protocol/custody/chain.ts';
import { withHandOver, withLogEntry } from '../../src/protocol/custody/log-entries.ts';

export const detector = (id: string, label: string): Detector => ({
  id,
  label,
  at: [1000, 1000],
  base: 762,
  radius: 50,
  tall: 25,
  pair: null,
});
/** Returns an instant of the invented visit, whose pick-up is on 5 May at 9:00. */
export const may = (day: number, time: string) => `2026-05-0${day}T${time}:00-04:00`;
const VISIT: Visit = {
  closedSince: may(1, '20:00'),
  mitigationOnSince: null,
  start: may(2, '09:00'),
  end: may(5, '09:00'),
};
export const planOf = (labels: readonly string[], visit: Partial<Visit> = {}): Plan => {
  const plan = emptyPlan();
  const [level] = plan.levels;
  if (!level) throw new Error('an empty plan has a level');
  const detectors = labels.map((label, i) => detector(`d${i + 1}`, label));
  return {
    ...plan,
    site: { ...plan.site, timeZone: 'America/New_York' },
    levels: [{ ...level, name: 'Basement', detectors }],
    visit: { ...VISIT, ...visit },
  };
};
export const step = (at: string | null, from: string, to: string) => ({ at, from, to, note: '' });
/** Returns the chain of d1, which Ann Mill placed and picked up, with these hand-overs. */
export const chained = (
  steps: readonly ReturnType<typeof step>[],
  visit: Partial<Visit> = {},
  entry: Partial<LogEntry> = {},
) =>
  chainOf(
    steps.reduce(
      (plan, each) => withHandOver(plan, 'd1', each),
      withLogEntry(planOf(['A1'], visit), 'd1', { placedBy: 'Ann Mill', fetchedBy: 'Ann Mill', ...entry }),
    ),
    'd1',
  );
export const discrepancies = (chain: ReturnType<typeof chained>) => chain.steps.flatMap((each) => each.discrepancies);
export const kinds = (chain: ReturnType<typeof chained>) => chain.steps.map(({ kind }) => kind);
