import type { Plan } from '../../../geometry/plan/model.ts';
import { effectiveRules } from '../../../geometry/rules/profiles.ts';
import { listed, notRunRules } from '../../../geometry/words.ts';
import { detectorName, type Hint, type SeenLevel, WEIGHT } from './hint.ts';

/** What is missing of the site, and what must never be quiet: loosened rules, checks that were not run. */
export function siteHints(plan: Plan, levels: readonly SeenLevel[]): readonly Hint[] {
  const hints: Hint[] = [...notRunHints(plan, levels)];
  const loosened = effectiveRules(plan.protocol).filter(({ override }) => override?.loosened);
  if (loosened.length > 0) {
    const names = listed(loosened.map(({ name }) => name.toLowerCase()));
    const text = `Looser than published: ${names}. Every sheet says so.`;
    hints.push({ text, act: null, missing: false, weight: WEIGHT.loosened });
  }
  if (!plan.title.trim()) {
    hints.push({
      text: 'The sheet has no title yet.',
      act: { kind: 'field', label: 'Write one', field: 'title' },
      missing: false,
      weight: WEIGHT.title,
    });
  }
  return hints;
}

/** One remark for each check that was not run, with the detectors that it was not run for. */
function notRunHints(plan: Plan, levels: readonly SeenLevel[]): readonly Hint[] {
  const names = new Map<string, string[]>();
  for (const { model, reports } of levels) {
    for (const report of reports) {
      for (const { rule, reason } of notRunRules(report, plan)) {
        const key = `${rule} was not run for %: ${reason.charAt(0).toLowerCase()}${reason.slice(1)}`;
        names.set(key, [...(names.get(key) ?? []), detectorName(model.level.detectors, report.id)]);
      }
    }
  }
  const placed = plan.site.latitude !== null && plan.site.longitude !== null;
  return [...names].map(([words, detectors]) => ({
    text: words.replace('%', () => listed(detectors)),
    act: placed ? null : ({ kind: 'field', label: 'Give the place', field: 'latitude' } as const),
    missing: false,
    weight: WEIGHT.notRun,
  }));
}
