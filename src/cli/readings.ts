import { CAUTIONS, type Plan } from '../../geometry/index.ts';
import { judgeReadings, type SetReport, type TestStanding } from '../job/readings/judge.ts';
import {
  describeSet,
  isSettled,
  RESULT_CAUTIONS,
  STANDING_WORDS,
  setDocument,
  setName,
} from '../job/readings/report.ts';
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
    const text = json ? `${JSON.stringify(document, null, 2)}\n` : asText(plan, sets, standing);
    return { text, code: sets.every(isSettled) ? 0 : 1 };
  },
};

function asText(plan: Plan, sets: readonly SetReport[], standing: TestStanding): string {
  const lines = sets.flatMap((report) => [
    setName(report),
    ...describeSet(plan, report).map((line) => `  ${line}`),
    ...report.next.sources.map(({ cite }) => `  Source: ${cite}`),
    '',
  ]);
  const none = sets.length === 0 ? ['No result is entered yet.', ''] : [];
  const doubt = sets.length > 0 && STANDING_WORDS[standing] ? [STANDING_WORDS[standing], ''] : [];
  return `${[plan.title || 'Plan without a title', '', ...none, ...doubt, ...lines, ...RESULT_CAUTIONS, ...CAUTIONS].join('\n')}\n`;
}
