import type { Plan } from '../../geometry/plan/model.ts';
import type { EarlierResult } from '../../geometry/plan/test-record.ts';
import { describeLocation } from '../../src/protocol/results/describe-location.ts';
import { evaluateResults } from '../../src/protocol/results/evaluate-results.ts';
import { HOLDS } from './results.ts';

export const earlier = (value: number, change: Partial<EarlierResult> = {}): EarlierResult => ({
  at: null,
  value,
  unit: 'pCi/L',
  term: 'short-term',
  note: '',
  ...change,
});
export const described = (plan: Plan) => {
  const [report] = evaluateResults(plan, HOLDS);
  return report ? describeLocation(plan, report).join(' ') : '';
};
