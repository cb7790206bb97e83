import type { Mm } from '../plan/model.ts';
import type { RuleOverride } from '../rules/profiles.ts';
import { formatRequired, type LengthUnit } from '../units/index.ts';

/** Returns how a distance of the plan, mm, stands to the published one, in words. */
export function overrideWord(least: Mm | null, { published, loosened }: RuleOverride): string {
  if (loosened) return 'Looser than published';
  if (published === null) return 'No published figure';
  return least === published ? 'As published' : 'Stricter than published';
}

/** Returns the distance of the plan beside the published one: "3 ft instead of the published 2 ft". */
export function insteadOf(least: Mm, { published }: RuleOverride, unit: LengthUnit): string {
  const own = formatRequired(least, unit);
  return published === null
    ? `${own}, where the published text gives no figure`
    : `${own} instead of the published ${formatRequired(published, unit)}`;
}
