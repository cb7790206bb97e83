import { CAUTIONS, type Plan } from '../../geometry/index.ts';
import { sourceWords } from '../../geometry/words/sources.ts';
import { judgeReadings, type SetReport, STANDING_WORDS, type TestStanding } from '../job/readings/judge.ts';
import { describeSet, isSettled, RESULT_CAUTIONS, setDocument } from '../job/readings/report.ts';
import { setName } from '../job/readings/set-name.ts';
import { testStanding } from '../job/timing/report.ts';
import { isKnownWrong, standingReasons } from '../job/timing/standing.ts';
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
    const document = {
      sets: sets.map(setDocument),
      test: standing,
      reasons: standingReasons(plan).map(({ says }) => says),
      cautions: [...RESULT_CAUTIONS, ...CAUTIONS],
    };
    const text = json ? `${JSON.stringify(document, null, 2)}\n` : asText(plan, sets, standing);
    return { text, code: isDone(plan, sets) ? 0 : 1 };
  },
};

/**
 * Without any result there is nothing to doubt. What nobody has written down of the times and the house is the question of `timing`
 * and stands in the document as "unknown"; what is known to be wrong with them counts here.
 */
const isDone = (plan: Plan, sets: readonly SetReport[]): boolean =>
  sets.length === 0 || (!isKnownWrong(plan) && sets.every(isSettled));

function asText(plan: Plan, sets: readonly SetReport[], standing: TestStanding): string {
  const lines = sets.flatMap((report) => [
    setName(report),
    ...describeSet(plan, report).map((line) => `  ${line}`),
    ...(report.next.sources.length > 0 ? [`  Source: ${sourceWords(report.next.sources)}`] : []),
    '',
  ]);
  const none = sets.length === 0 ? ['No result is entered yet.', ''] : [];
  const why = standingReasons(plan).map(({ says }) => `  ${says}`);
  const doubt = sets.length > 0 && standing !== 'holds' ? [STANDING_WORDS[standing], ...why, ''] : [];
  return `${[plan.title || 'Plan without a title', '', ...none, ...doubt, ...lines, ...RESULT_CAUTIONS, ...CAUTIONS].join('\n')}\n`;
}
