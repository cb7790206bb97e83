import { openChecks } from '../../../geometry/check/looked-for.ts';
import { checksInOrder, describeCheck, headlineText, listed, openRules } from '../../../geometry/messages/index.ts';
import { subjectName } from '../../../geometry/messages/subject.ts';
import type { Detector, Plan } from '../../../geometry/plan/model.ts';
import { effectiveRules } from '../../../geometry/rules/profiles.ts';
import { exposureEnd } from '../../../geometry/sun/times.ts';
import { actionToSettle } from './answer-actions.ts';
import { detectorName, type Hint, type HintAction, type SeenLevel, WEIGHT, withLevelName } from './hint.ts';

/** Returns hints about detectors, over all levels, the most important first. */
export function placeHints(plan: Plan, levels: readonly SeenLevel[]): readonly Hint[] {
  const hints = [...absentHints(plan, levels), ...levels.flatMap(detectorHints), ...labelHints(levels)];
  return hints.sort((a, b) => a.weight - b.weight);
}

/** Returns every detector with its verdict, in words; empty for none. */
export function placedInWords(levels: readonly SeenLevel[]): string {
  const placed = levels.flatMap(({ model: { level }, reports }) =>
    reports.map((report) => `${detectorName(level.detectors, report.id)} ${headlineText(report)}`),
  );
  return placed.length > 0 ? `${placed.join(', ')}.` : '';
}

/** Hints about levels to test without a detector: each of them if the profile tests each, else one if none has a detector. */
function absentHints(plan: Plan, levels: readonly SeenLevel[]): readonly Hint[] {
  const toTest = levels.filter((seen) => seen.toTest);
  const bare = toTest.filter(({ model }) => model.level.detectors.length === 0);
  if (bare.length < toTest.length && !testsEach(plan)) return [];
  const [first] = bare;
  const asked = testsEach(plan) || !first ? bare : [bare.find(({ inView }) => inView) ?? first];
  return asked.map((seen) => {
    const { level, rooms } = seen.model;
    if (rooms.length === 0) {
      const text = withLevelName(seen, 'Close a room first, then place a detector in it.');
      return { text, action: null, missing: true, weight: WEIGHT.noDetector };
    }
    const text = withLevelName(seen, 'No detector is placed on this level yet.');
    const action: HintAction = {
      kind: 'tool',
      label: 'Place a detector',
      levelId: level.id,
      tool: { kind: 'detector' },
    };
    return { text, action, missing: true, weight: WEIGHT.noDetector };
  });
}

/** Whether the profile requires a test on every level on the ground, not on the lowest only. */
function testsEach({ protocol }: Plan): boolean {
  return effectiveRules(protocol).some(
    ({ subject }) => subject.of === 'level' && subject.choice === 'each-on-the-ground',
  );
}

function detectorHints(seen: SeenLevel): readonly Hint[] {
  return [...verdictHints(seen), ...pairHints(seen), ...openHints(seen)];
}

/** Returns hints about checks that were not run and that neither the walk nor the site asks about, e.g. the carrier and direct sun. */
function openHints(seen: SeenLevel): readonly Hint[] {
  const { plan, model, reports } = seen;
  const { level } = model;
  const open = reports.flatMap((report) =>
    openRules(report, plan)
      .others.filter(({ id }) => id !== 'level')
      .map((rule) => ({ rule, id: report.id, report })),
  );
  const rules = new Set(open.map(({ rule }) => rule));
  return [...rules].map((rule): Hint => {
    const ids = open.filter((each) => each.rule === rule).map(({ id }) => id);
    const report = open.find((each) => each.rule === rule)?.report;
    const check = report && openChecks(report).find((each) => each.rule === rule.id);
    const subject = check?.subject ? ` against ${subjectName(level, check.subject)}` : '';
    const names = listed(ids.map((id) => detectorName(level.detectors, id)));
    const text = withLevelName(seen, `${rule.name} is not run for ${names}${subject}. ${check?.reason ?? ''}`.trim());
    // Direct sun needs the exposure, whose end may not be known before the pick-up.
    const missing = rule.subject.of !== 'sun' || exposureEnd(plan.visit) !== null;
    return {
      text,
      action: report ? actionToSettle(plan, level, report, rule.id) : null,
      missing,
      weight: WEIGHT.support,
    };
  });
}

function verdictHints(seen: SeenLevel): readonly Hint[] {
  const { level } = seen.model;
  return seen.reports.flatMap(({ id, verdict, checks }) => {
    if (verdict === 'clear') return [];
    const [worst] = checksInOrder(checks.filter(({ notRun }) => !notRun));
    const says = {
      blocked: 'is blocked.',
      unknown: 'cannot be decided yet.',
      tight: 'is tight: measure again.',
    }[verdict];
    const why = worst ? ` ${describeCheck(worst, seen.plan, level)}` : '';
    const text = withLevelName(seen, `${detectorName(level.detectors, id)} ${says}${why}`);
    return [{ text, action: showAction(seen, [id]), missing: verdict !== 'tight', weight: WEIGHT[verdict] }];
  });
}

function pairHints(seen: SeenLevel): readonly Hint[] {
  const { detectors } = seen.model.level;
  const pairs = new Map<string, readonly Detector[]>();
  for (const detector of detectors) {
    if (detector.pair !== null) pairs.set(detector.pair, [...(pairs.get(detector.pair) ?? []), detector]);
  }
  return [...pairs].flatMap(([pair, members]) => {
    if (members.length === 2) return [];
    const ids = members.map(({ id }) => id);
    const names = listed(members.map(({ id }) => detectorName(detectors, id)));
    const alone = members.length === 1;
    const text = alone
      ? `${names} is marked as pair ${pair}, and its companion is missing.`
      : `Pair ${pair} has ${members.length} detectors: ${names}. Right where all of them stand side by side.`;
    const weight = alone ? WEIGHT.alone : WEIGHT.tight;
    return [{ text: withLevelName(seen, text), action: showAction(seen, ids), missing: alone, weight }];
  });
}

/** Hints about labels that are missing or occur twice in the plan: the laboratory does not know the levels. */
function labelHints(levels: readonly SeenLevel[]): readonly Hint[] {
  const taken = new Set<string>();
  return levels.flatMap((seen) =>
    seen.model.level.detectors.flatMap(({ id, label }) => {
      const text = label.trim();
      const twice = text !== '' && taken.has(text);
      taken.add(text);
      if (text !== '' && !twice) return [];
      const words = twice
        ? `Two detectors are labeled ${text}. Give each its own.`
        : 'A detector has no label. The lab needs one.';
      return [
        { text: withLevelName(seen, words), action: showAction(seen, [id]), missing: true, weight: WEIGHT.label },
      ];
    }),
  );
}

function showAction({ model }: SeenLevel, ids: readonly string[]): HintAction {
  return { kind: 'show', label: ids.length > 1 ? 'Show them' : 'Show it', levelId: model.level.id, ids, at: null };
}
