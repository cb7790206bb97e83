import { openChecks } from '../../../geometry/check/looked-for.ts';
import { listed } from '../../../geometry/messages/index.ts';
import type { Plan } from '../../../geometry/plan/model.ts';
import { levelName } from '../../../geometry/plan/nouns.ts';
import { effectiveRules } from '../../../geometry/rules/profiles.ts';
import { glazedOpenings } from '../../../geometry/sun/glazed.ts';
import { GROUND_PRESS, LIVING_PRESS, PURPOSE_ACTION } from './answer-actions.ts';
import { detectorName, type Hint, type SeenLevel, WEIGHT } from './hint.ts';

/** Returns hints about the site: purpose, use of the levels, the location for computing direct sun; and about loosened rules. */
export function siteHints(plan: Plan, levels: readonly SeenLevel[]): readonly Hint[] {
  const hints: Hint[] = [...askedHints(plan, levels), ...placeHints(plan, levels)];
  const loosened = effectiveRules(plan.protocol).filter(({ override }) => override?.loosened);
  if (loosened.length > 0) {
    const names = listed(loosened.map(({ name }) => name.toLowerCase()));
    const text = `Looser than published: ${names}. Every plan sheet states it.`;
    hints.push({ text, action: null, missing: false, weight: WEIGHT.loosened });
  }
  if (!plan.title.trim()) {
    hints.push({
      text: 'The plan has no title yet.',
      action: { kind: 'field', label: 'Write one', field: 'title' },
      missing: false,
      weight: WEIGHT.title,
    });
  }
  return hints;
}

/** Returns hints about unanswered questions that the choice of the level to test depends on. */
function askedHints({ protocol, site }: Plan, levels: readonly SeenLevel[]): readonly Hint[] {
  const weight = WEIGHT.asked;
  const purpose: Hint = {
    text: 'Why the house is tested is not answered yet.',
    action: PURPOSE_ACTION,
    missing: true,
    weight,
  };
  const living = levels
    .filter(({ model }) => model.level.livingAnswered === false)
    .map(({ model: { level } }): Hint => {
      const text = `Whether people live on ${levelName(level)} is not answered yet.`;
      return { text, action: { kind: 'living', label: LIVING_PRESS, levelId: level.id }, missing: true, weight };
    });
  const choosesByGround = effectiveRules(protocol).some(
    ({ subject }) => subject.of === 'level' && subject.choice === 'each-on-the-ground',
  );
  const ground = levels
    .filter(({ model }) => choosesByGround && model.level.groundAnswered === false)
    .map(({ model: { level } }): Hint => {
      const text = `What is under the floor of ${levelName(level)} is not answered yet.`;
      return { text, action: { kind: 'level', label: GROUND_PRESS, levelId: level.id }, missing: true, weight };
    });
  return [...(site.purposeAnswered === false ? [purpose] : []), ...living, ...ground];
}

/** Returns hints about the location of the house and north if direct sun at a detector needs them and is not answered. */
function placeHints({ site }: Plan, levels: readonly SeenLevel[]): readonly Hint[] {
  const hint = (what: string, label: string, field: 'latitude' | 'north', needed: readonly SeenLevel[]): Hint[] => {
    const names = sunOpen(needed);
    if (names.length === 0) return [];
    const text = `Direct sun is not worked out for ${listed(names)}: ${what} is not entered.`;
    return [{ text, action: { kind: 'field', label, field }, missing: true, weight: WEIGHT.place }];
  };
  const isPlaced = site.latitude !== null && site.longitude !== null;
  const glazed = levels.filter(({ model }) => glazedOpenings(model).length > 0);
  return [
    ...(isPlaced ? [] : hint('the location of the house', 'Enter the location', 'latitude', levels)),
    ...(site.northAnswered === false ? hint('north', 'Enter north', 'north', glazed) : []),
  ];
}

/** Returns the names of the detectors for which direct sun is neither computed nor answered. */
function sunOpen(levels: readonly SeenLevel[]): readonly string[] {
  return levels.flatMap(({ model, reports }) =>
    reports
      .filter((report) => openChecks(report).some(({ rule }) => rule === 'direct-sun'))
      .map(({ id }) => detectorName(model.level.detectors, id)),
  );
}
