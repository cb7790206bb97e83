import { CAUTIONS, type Plan } from '../../geometry/index.ts';
import { judgeReadings, type SetReport } from '../job/readings/judge.ts';
import { describeSet, isSettled, RESULT_CAUTIONS, setDocument, setName } from '../job/readings/report.ts';
import { testStanding } from '../job/timing/report.ts';
import type { Command } from './call.ts';

/** `readings FILE`: the results by location, whether pairs agree, and what comes next. */
export const readings: Command = {
  name: 'readings',
  form: 'FILE',
  does: 'the results by location, whether pairs agree, and what comes next',
  options: [],
  run: ({ plan, json }) => {
    const standing = testStanding(plan);
    const sets = judgeReadings(plan, standing);
    const document = { sets: sets.map(setDocument), test: standing, cautions: [...RESULT_CAUTIONS, ...CAUTIONS] };
    const text = json ? `${JSON.stringify(document, null, 2)}\n` : asText(plan, sets);
    return { text, code: sets.every(isSettled) ? 0 : 1 };
  },
};

function asText(plan: Plan, sets: readonly SetReport[]): string {
  const lines = sets.flatMap((report) => [
    setName(report),
    ...describeSet(plan, report).map((line) => `  ${line}`),
    ...report.next.sources.map(({ cite }) => `  Source: ${cite}`),
    '',
  ]);
  const none = sets.length === 0 ? ['No result is entered yet.', ''] : [];
  return `${[plan.title || 'Plan without a title', '', ...none, ...lines, ...RESULT_CAUTIONS, ...CAUTIONS].join('\n')}\n`;
}
