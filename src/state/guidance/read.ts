import type { Plan } from '../../../geometry/plan/model.ts';
import { counted } from '../../../geometry/words.ts';
import { judgeReadings, STANDING_WORDS } from '../../job/readings/judge.ts';
import { saidIn } from '../../job/readings/radon.ts';
import { setName } from '../../job/readings/set-name.ts';
import { locations } from '../../job/readings/sets.ts';
import { testStanding } from '../../job/timing/report.ts';
import { STAGE_PRESS, standingReasons } from '../../job/timing/standing.ts';
import { type Hint, WEIGHT } from './hint.ts';

/**
 * What the results ask for next. Nothing before the detectors are fetched: there is none to enter. While the test is not known to
 * hold no step is named from a value.
 */
export function readHints(plan: Plan): readonly Hint[] {
  const open = { kind: 'stage', label: 'Look at the results', stage: 'read' } as const;
  if (plan.readings.length === 0) {
    if (plan.visit.end === null) return [];
    return [{ text: 'No result is entered yet.', act: open, missing: true, weight: WEIGHT.result }];
  }
  const standing = testStanding(plan);
  if (standing !== 'holds') {
    const stage = standingReasons(plan)[0]?.stage ?? 'time';
    const act = { kind: 'stage', label: STAGE_PRESS[stage], stage } as const;
    return [{ text: STANDING_WORDS[standing], act, missing: true, weight: WEIGHT.result }];
  }
  const reports = judgeReadings(plan, standing);
  const without = locations(plan)
    .filter(({ detectors: [first] }) => !reports.some(({ set }) => set.detectors.some((each) => each === first)))
    .map((set) => ({ text: `${setName({ set })}: no result is entered yet.`, missing: true }));
  const steps = reports.map((report) => ({
    text: `${setName(report)}: ${saidIn(plan.display.radon, report.next.says)}`,
    missing: report.next.id === 'wait-for-results' || report.next.id === 'undecided',
  }));
  return [...without, ...steps].map((hint) => ({ ...hint, act: open, weight: WEIGHT.result }));
}

export function readInWords({ readings }: Plan): string {
  return readings.length === 0 ? '' : `${counted(readings.length, 'result')}.`;
}
