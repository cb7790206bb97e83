import { collisionsOf } from '../../geometry/check/collisions.ts';
import type { Check } from '../../geometry/check/types.ts';
import { buildLevel } from '../../geometry/level/build-level.ts';
import {
  CAUTIONS,
  changeWord,
  checkFigures,
  checkSubject,
  checksInOrder,
  describeComputed,
  describeNotice,
  describeNotRun,
  describeReport,
  headlineOf,
  insteadOf,
  SEND_THE_PLAN,
} from '../../geometry/messages/index.ts';
import { describeSources } from '../../geometry/messages/sources.ts';
import type { Level, Plan } from '../../geometry/plan/model.ts';
import { effectiveRules, profileById } from '../../geometry/rules/profiles.ts';
import { formatRequired } from '../../geometry/units/index.ts';
import { headlineDetail } from '../protocol/validity/headline.ts';
import { headlineSentence } from '../protocol/validity/headline-sentence.ts';
import { testState } from '../protocol/validity/test-state.ts';
import type { VerifiedLevel, VerifiedReport } from '../protocol/validity/verified-placement.ts';
import type { CliCommand } from './call.ts';
import { verificationJson } from './computed-json.ts';
import { isPlacementFine, verifiedPlacement } from './verified-placement.ts';

/** `check FILE`: checks every detector of every level against the plan's profile. */
export const check: CliCommand = {
  name: 'check',
  synopsis: 'FILE',
  summary: 'every detector against every rule',
  options: [],
  run: ({ plan, json }) => {
    const levels = verifiedPlacement(plan);
    const text = json ? `${JSON.stringify(asJson(plan, levels), null, 2)}\n` : asText(plan, levels);
    return { text, code: isPlacementFine(levels) ? 0 : 1 };
  },
};

function asJson(plan: Plan, levels: readonly VerifiedLevel[]) {
  const { profile, overrides } = plan.protocol;
  const state = testState(plan, levels);
  return {
    test: state.validity,
    headline: `${headlineSentence(plan, state)} ${headlineDetail(plan, state)}`,
    profile,
    overrides,
    tapeTolerance: plan.tapeTolerance,
    levels: levels.map(({ id, detectors }) => {
      const level = plan.levels.find((one) => one.id === id);
      return {
        id,
        notices: level ? noticesOf(plan, level) : [],
        detectors: detectors.map(({ checks, computed, discrepancy: _, ...detector }) => ({
          ...detector,
          ...verificationJson(computed),
          entered: level ? enteredBy(level, detector.id) : [],
          open: headlineOf({ ...detector, checks }).open,
          checks: checks.map(({ witness: _, sources, ...row }) => ({
            ...row,
            sources: sources.map(({ cite, mark }) => ({ cite, mark })),
          })),
        })),
      };
    }),
    cautions: CAUTIONS,
  };
}

/** Returns the notices about the drawing, as on screen. */
function noticesOf(plan: Plan, level: Level) {
  return buildLevel(level).notices.map((notice) => ({
    ...notice,
    words: describeNotice(notice, plan.display.length, level),
  }));
}

/** Returns the ids of objects and fixtures that a detector is inside of. */
function enteredBy(level: Level, id: string): string[] {
  const detector = level.detectors.find((one) => one.id === id);
  return detector ? collisionsOf(level, detector).map(({ thing }) => thing.id) : [];
}

function asText(plan: Plan, levels: readonly VerifiedLevel[]): string {
  const state = testState(plan, levels);
  const lines = [
    plan.title || 'Plan without a title',
    ...headLines(plan),
    `${headlineSentence(plan, state)} ${headlineDetail(plan, state)}`,
  ];
  plan.levels.forEach((level, i) => {
    lines.push('', level.name || level.id);
    const detectors = levels[i]?.detectors ?? [];
    if (detectors.length === 0) lines.push('  No detector on this level.');
    for (const detector of detectors) lines.push(...detectorLines(plan, level, detector));
  });
  return `${[...lines, '', ...sourceLines(plan, levels), '', ...CAUTIONS].join('\n')}\n`;
}

/** Returns the sources of each rule that was checked, once. */
function sourceLines(plan: Plan, levels: readonly VerifiedLevel[]): string[] {
  const used = new Set(
    levels.flatMap(({ detectors }) => detectors.flatMap(({ checks }) => checks.map(({ rule }) => rule))),
  );
  const rules = effectiveRules(plan.protocol).filter(({ id }) => used.has(id));
  return rules.length === 0
    ? []
    : ['Sources', ...rules.map((rule) => `  ${rule.name}: ${describeSources(rule.sources)}`)];
}

function headLines(plan: Plan): string[] {
  const unit = plan.display.length;
  return [
    `${profileById(plan.protocol.profile)?.name ?? ''} (${plan.protocol.profile}); tape tolerance ${formatRequired(plan.tapeTolerance, unit)}`,
    ...effectiveRules(plan.protocol).flatMap(({ name, least, override }) => {
      const word = changeWord(least, override);
      if (!word || !override || least === null) return [];
      const note = override.note ? `: ${override.note}` : '';
      return [`${word} ${name}: ${insteadOf(least, override, unit)}${note}`];
    }),
  ];
}

function detectorLines(plan: Plan, level: Level, report: VerifiedReport): string[] {
  const detector = level.detectors.find(({ id }) => id === report.id);
  const label = detector?.label || report.id;
  const rows = checksInOrder(report.checks.filter(({ notRun }) => !notRun));
  return [
    `  ${label}: ${headlineOf(report).word.toLowerCase()}. ${describeReport(report, plan, level)}`,
    ...rows.map((row) => `    ${checkLine(plan, level, row)}`),
    ...describeNotRun(report, plan, level).map((line) => `    not run  ${line}`),
    `    ${describeComputed(report.computed, plan)}`,
    ...(report.computed.how === 'differs' ? [`    ${SEND_THE_PLAN}`] : []),
  ];
}

function checkLine(plan: Plan, level: Level, row: Check): string {
  const rule = effectiveRules(plan.protocol).find(({ id }) => id === row.rule);
  const { measured, needed, spare } = checkFigures(row, plan);
  const subject = checkSubject(row, plan, level);
  const name = [rule?.name, subject].filter(Boolean).join(', ');
  const limit = row.bound === 'least' ? 'needs' : 'at the most';
  const figures = measured
    ? [`${measured}, ${limit} ${needed}`, spare].filter(Boolean).join(', ')
    : row.reason || 'met';
  return `${row.verdict.padEnd(8)} ${name}: ${figures}`;
}
