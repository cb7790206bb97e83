import type { Plan } from '../../../geometry/plan/model.ts';
import { counted } from '../../../geometry/words.ts';
import { judgeReadings } from '../../job/readings/judge.ts';
import { setName } from '../../job/readings/report.ts';
import { testStanding } from '../../job/timing/report.ts';
import { type Hint, WEIGHT } from './hint.ts';

/** What the results ask for next. Nothing before the detectors are fetched: there is none to enter. */
export function readHints(plan: Plan): readonly Hint[] {
  const open = { kind: 'stage', label: 'Look at the results', stage: 'read' } as const;
  if (plan.readings.length === 0) {
    if (plan.visit.end === null) return [];
    return [{ text: 'No result is entered yet.', act: open, missing: false, weight: WEIGHT.result }];
  }
  return judgeReadings(plan, testStanding(plan)).map((report) => ({
    text: `${setName(report)}: ${report.next.says}`,
    act: open,
    missing: false,
    weight: WEIGHT.result,
  }));
}

export function readInWords({ readings }: Plan): string {
  return readings.length === 0 ? '' : `${counted(readings.length, 'result')}.`;
}
