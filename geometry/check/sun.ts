import type { LevelModel } from '../level/types.ts';
import type { Plan } from '../plan/model.ts';
import type { EffectiveRule } from '../rules/profiles.ts';
import { capital } from '../words/nouns.ts';
import { wordCheck } from './measure.ts';
import type { Check } from './types.ts';

/**
 * Direct sun is not worked out yet. On a level that has an outside door or window it stands as not run; on one that has
 * none there is no sun to keep away from.
 */
export function checkSun({ site, visit }: Plan, model: LevelModel, rule: EffectiveRule): Check[] {
  if (!model.openings.some(({ outside, opening }) => outside && opening.kind !== 'passage')) return [];
  const placed = site.latitude !== null && site.longitude !== null;
  const timed = visit.start !== null && visit.end !== null;
  const missing = [placed ? '' : 'the place of the house', timed ? '' : 'the times of the test'].filter(Boolean);
  const reason = missing.length
    ? `${capital(missing.join(' and '))} ${timed ? 'is' : 'are'} not given. Keep out of direct sun.`
    : 'The path of the sun is not worked out here. Keep out of direct sun.';
  return [{ ...wordCheck(rule, 'unknown', reason, true), required: rule.least }];
}
