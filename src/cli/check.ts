import {
  CAUTIONS,
  type Check,
  checkFigures,
  checkPlan,
  checkSubject,
  type DetectorReport,
  describeEntered,
  describeNotRun,
  describeReport,
  effectiveRules,
  formatRequired,
  inOrder,
  type Level,
  type Plan,
  profileById,
  sourceLine,
  VERDICT_WORD,
} from '../../geometry/index.ts';
import type { Command } from './call.ts';

/** `check FILE`: every detector of every level against the plan's profile. */
export const check: Command = {
  name: 'check',
  form: 'FILE',
  does: 'every detector against every rule',
  options: [],
  run: ({ plan, json }) => {
    const report = checkPlan(plan);
    const trouble = report.levels.some(({ detectors }) =>
      detectors.some(({ verdict }) => verdict === 'blocked' || verdict === 'unknown'),
    );
    const text = json ? `${JSON.stringify(asJson(plan, report), null, 2)}\n` : asText(plan, report);
    return { text, code: trouble ? 1 : 0 };
  },
};

type Report = ReturnType<typeof checkPlan>;

function asJson(plan: Plan, { levels }: Report) {
  const { profile, overrides } = plan.protocol;
  return {
    profile,
    overrides,
    tapeTolerance: plan.tapeTolerance,
    levels: levels.map(({ id, detectors }) => ({
      id,
      detectors: detectors.map(({ checks, ...detector }) => ({
        ...detector,
        checks: checks.map(({ witness: _, ...row }) => row),
      })),
    })),
    cautions: CAUTIONS,
  };
}

function asText(plan: Plan, report: Report): string {
  const lines = [plan.title || 'Plan without a title', ...headLines(plan)];
  plan.levels.forEach((level, i) => {
    lines.push('', level.name || level.id);
    const detectors = report.levels[i]?.detectors ?? [];
    if (detectors.length === 0) lines.push('  No detector on this level.');
    for (const detector of detectors) lines.push(...detectorLines(plan, level, detector));
  });
  return `${[...lines, '', ...sourceLines(plan, report), '', ...CAUTIONS].join('\n')}\n`;
}

/** Each rule that was checked with where it comes from, once. */
function sourceLines(plan: Plan, { levels }: Report): string[] {
  const used = new Set(
    levels.flatMap(({ detectors }) => detectors.flatMap(({ checks }) => checks.map(({ rule }) => rule))),
  );
  const rules = effectiveRules(plan.protocol).filter(({ id }) => used.has(id));
  return rules.length === 0 ? [] : ['Sources', ...rules.map((rule) => `  ${rule.name}: ${sourceLine(rule)}`)];
}

function headLines(plan: Plan): string[] {
  const unit = plan.display.length;
  const rows = effectiveRules(plan.protocol).filter(({ override }) => override);
  return [
    `${profileById(plan.protocol.profile)?.name ?? ''} (${plan.protocol.profile}); tape tolerance ${formatRequired(plan.tapeTolerance, unit)}`,
    ...rows.map(({ name, least, override }) => {
      const how = override?.loosened ? 'LOOSENED' : 'tightened';
      const note = override?.note ? `: ${override.note}` : '';
      return `${how} ${name}: ${formatRequired(least ?? 0, unit)} instead of ${formatRequired(override?.published ?? 0, unit)}${note}`;
    }),
  ];
}

function detectorLines(plan: Plan, level: Level, report: DetectorReport): string[] {
  const detector = level.detectors.find(({ id }) => id === report.id);
  const label = detector?.label || report.id;
  const entered = detector ? describeEntered(level, detector, report) : '';
  const rows = inOrder(report.checks.filter(({ notRun }) => !notRun));
  return [
    `  ${label}: ${VERDICT_WORD[report.verdict]}. ${describeReport(report, plan, level)}`,
    ...(entered ? [`    look     ${entered}`] : []),
    ...rows.map((row) => `    ${checkLine(plan, level, row)}`),
    ...describeNotRun(report, plan).map((line) => `    not run  ${line}`),
  ];
}

function checkLine(plan: Plan, level: Level, row: Check): string {
  const rule = effectiveRules(plan.protocol).find(({ id }) => id === row.rule);
  const { measured, needed, spare } = checkFigures(row, plan);
  const subject = checkSubject(row, plan, level);
  const name = [rule?.name, subject].filter(Boolean).join(', ');
  const limit = row.bound === 'least' ? 'needs' : 'at the most';
  const figures = measured ? `${measured}, ${limit} ${needed}, ${spare}` : row.reason || 'met';
  return `${VERDICT_WORD[row.verdict].padEnd(8)} ${name}: ${figures}`;
}
