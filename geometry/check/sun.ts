import type { LevelModel } from '../level/types.ts';
import type { Plan } from '../plan/model.ts';
import { capital } from '../plan/nouns.ts';
import type { EffectiveRule } from '../rules/profiles.ts';
import { wasLookedFor } from './looked-for.ts';
import { reasonCheck } from './measure.ts';
import type { Check } from './types.ts';

/**
 * The path of the sun is not computed: on a level with an opening to the outside the check is not run, unless a
 * person confirms that no sun reaches the spot. Clear on a level without such an opening; whether openings were
 * looked for is reported by `outside-opening`.
 */
export function checkSun(plan: Plan, model: LevelModel, rule: EffectiveRule): Check[] {
  return [{ ...sunRow(plan, model, rule), required: rule.least }];
}

function sunRow(plan: Plan, model: LevelModel, rule: EffectiveRule): Check {
  if (wasLookedFor(model, rule))
    return reasonCheck(rule, 'clear', 'Looked at on site: no direct sun reaches the spot.');
  if (model.openings.some(({ outside }) => outside)) return reasonCheck(rule, 'unknown', missingForSun(plan), true);
  return reasonCheck(rule, 'clear', 'No opening to the outside is drawn.');
}

function missingForSun({ site, visit }: Plan): string {
  const placed = site.latitude !== null && site.longitude !== null;
  const timed = visit.start !== null && visit.end !== null;
  const missing = [placed ? '' : 'the place of the house', timed ? '' : 'the times of the test'].filter(Boolean);
  if (missing.length === 0) return 'The path of the sun is not worked out here. Keep out of direct sun.';
  return `${capital(missing.join(' and '))} ${timed ? 'is' : 'are'} not given. Keep out of direct sun.`;
}
