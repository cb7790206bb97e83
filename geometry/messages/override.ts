import type { Mm } from '../plan/model.ts';
import { needsNote, type RuleOverride } from '../rules/profiles.ts';
import { formatRequired, type LengthUnit } from '../units/index.ts';

/** Returns how a distance of the plan, mm, compares with the published one, in words. */
export function overrideWord(least: Mm | null, { published, loosened }: RuleOverride): string {
  if (loosened) return 'Looser than published';
  if (published === null) return 'No published figure';
  return least === published ? 'As published' : 'Stricter than published';
}

/**
 * Returns how the plan changes the distance of a rule, in a word for papers and the command line; in capitals if it is loosened. "" if the
 * distance is the published one.
 */
export function changeWord(least: Mm | null, override: RuleOverride | null): string {
  if (!override || least === override.published) return '';
  const { published, loosened } = override;
  if (loosened) return 'LOOSENED';
  return published === null ? 'Own distance' : 'Tightened';
}

/** Returns why a distance, mm, is refused as an override of the published one, in words; "" if it is accepted. */
export function overrideRefusal(wanted: Mm, published: Mm | null, note: string): string {
  if (wanted === published) return 'This is the published distance already. Write another one.';
  if (published === null && wanted === 0) return 'The published text gives no figure. Enter the distance.';
  if (!needsNote(published, wanted) || note.trim()) return '';
  return published === null
    ? 'The published text gives no figure. Enter who set this distance.'
    : 'This is looser than published. Enter why that is right here.';
}

/** Returns the distance of the plan together with the published one: "3 ft instead of the published 2 ft". */
export function insteadOf(least: Mm, { published }: RuleOverride, unit: LengthUnit): string {
  const own = formatRequired(least, unit);
  return published === null
    ? `${own}, where the published text gives no figure`
    : `${own} instead of the published ${formatRequired(published, unit)}`;
}
