import type { LevelModel } from '../level/types.ts';
import type { Plan } from '../plan/model.ts';
import { capital } from '../plan/nouns.ts';
import type { EffectiveRule } from '../rules/profiles.ts';
import { wasLookedFor } from './looked-for.ts';
import { wordCheck } from './measure.ts';
import type { Check } from './types.ts';

/**
 * Direct sun is not worked out yet: on a level with an opening to the outside it stands as not run, unless a person vouches
 * that none reaches the spot. Where nothing that is drawn opens to the outside it is clear; whether openings were looked for is the
 * question of `outside-opening`.
 */
export function checkSun(plan: Plan, model: LevelModel, rule: EffectiveRule): Check[] {
  return [{ ...sunRow(plan, model, rule), required: rule.least }];
}

function sunRow(plan: Plan, model: LevelModel, rule: EffectiveRule): Check {
  if (wasLookedFor(model, rule)) return wordCheck(rule, 'clear', 'Looked at on site: no direct sun reaches the spot.');
  if (model.openings.some(({ outside }) => outside)) return wordCheck(rule, 'unknown', missingForSun(plan), true);
  return wordCheck(rule, 'clear', 'No opening to the outside is drawn.');
}

function missingForSun({ site, visit }: Plan): string {
  const placed = site.latitude !== null && site.longitude !== null;
  const timed = visit.start !== null && visit.end !== null;
  const missing = [placed ? '' : 'the place of the house', timed ? '' : 'the times of the test'].filter(Boolean);
  if (missing.length === 0) return 'The path of the sun is not worked out here. Keep out of direct sun.';
  return `${capital(missing.join(' and '))} ${timed ? 'is' : 'are'} not given. Keep out of direct sun.`;
}
