import { CAUTIONS } from '../../geometry/messages/index.ts';
import { describeSources, markedCite } from '../../geometry/messages/sources.ts';
import type { Plan } from '../../geometry/plan/model.ts';
import { TIMING_NAME } from '../protocol/timing/timing-check.ts';
import { type TimingReport, timingReport } from '../protocol/timing/timing-report.ts';
import { headlineDetail } from '../protocol/validity/headline.ts';
import { headlineSentence } from '../protocol/validity/headline-sentence.ts';
import { testState } from '../protocol/validity/test-state.ts';
import type { CliCommand } from './call.ts';
import { verifiedPlacement } from './verified-placement.ts';

/** `timing FILE`: checks the times of the visit against every limit. */
export const timing: CliCommand = {
  name: 'timing',
  synopsis: 'FILE',
  summary:
    'start and pick-up, closed-building conditions, mitigation system, weather and laboratory against their limits',
  options: [],
  run: ({ plan, json }) => {
    const report = timingReport(plan);
    const trouble = report.checks.some(({ verdict }) => verdict === 'blocked' || verdict === 'unknown');
    const state = testState(plan, verifiedPlacement(plan));
    const headline = `${headlineSentence(plan, state)} ${headlineDetail(plan, state)}`;
    const document = { test: state.validity, headline, ...asJson(report) };
    const text = json ? `${JSON.stringify(document, null, 2)}\n` : asText(plan, report, headline);
    return { text, code: trouble ? 1 : 0 };
  },
};

const asJson = (report: TimingReport) => ({
  ...report,
  checks: report.checks.map(({ sources, ...check }) => ({ ...check, sources: sources.map(markedCite) })),
  cautions: CAUTIONS,
});

function asText(
  plan: Plan,
  { checks, earliestEnd, latestEnd, closeBy, mitigationOnBy, planned }: TimingReport,
  headline: string,
): string {
  const { closedSince, plannedEnd, mitigationOnSince } = plan.visit;
  // A recorded time replaces the deadline, which no longer matters.
  const rows = [
    ...(closeBy === null && plan.visit.start !== null
      ? []
      : [closedSince ? ['Closed-building conditions since', closedSince] : ['Closed-building conditions by', closeBy]]),
    mitigationOnSince ? ['Mitigation system on since', mitigationOnSince] : ['Mitigation system on by', mitigationOnBy],
    ...(planned ? [['Pick-up as planned, not recorded yet', plannedEnd]] : []),
    ['Pick up from', earliestEnd],
    ['Pick up until', latestEnd],
  ].map(
    ([name, at]) =>
      `  ${name}: ${at ?? `not known: ${plan.visit.start === null ? 'the start is not recorded' : 'the hours of the kit are not entered'}`}`,
  );
  const lines = checks.flatMap(({ rule, verdict, detail, sources }) => [
    `  ${TIMING_NAME[rule]}: ${verdict.replace('-', ' ')}. ${detail}`,
    `    ${describeSources(sources)}`,
  ]);
  return `${[plan.title || 'Plan without a title', headline, ...rows, '', ...lines, '', ...CAUTIONS].join('\n')}\n`;
}
