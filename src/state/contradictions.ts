import { subjectsOf } from '../../geometry/check/subjects.ts';
import { withoutNoneHere } from '../../geometry/edit/index.ts';
import { listed } from '../../geometry/messages/index.ts';
import type { Detector, Level, Plan } from '../../geometry/plan/model.ts';
import { type EffectiveRule, effectiveRules } from '../../geometry/rules/profiles.ts';
import { modelOf } from './selectors.ts';

/**
 * The plan after an edit without the answers "none here" that what is drawn now contradicts: the thing counts. A word that no sun reaches
 * the spot does not hold for another spot. `words` says what was taken back; empty for nothing.
 */
export function withoutContradictions(before: Plan, after: Plan): { readonly plan: Plan; readonly words: string } {
  let plan = after;
  const gone: string[] = [];
  for (const level of after.levels) {
    const was = before.levels.find(({ id }) => id === level.id);
    if (level === was || !level.lookedFor?.length) continue;
    const rules = effectiveRules(after.protocol).filter((rule) => isContradicted(rule, level, was));
    plan = withoutNoneHere(
      plan,
      level.id,
      rules.map(({ id }) => id),
    );
    gone.push(...rules.map(({ absent, name }) => `"${absent ?? name}"`));
  }
  if (gone.length === 0) return { plan: after, words: '' };
  return { plan, words: `The answer ${listed(gone)} is taken back: it does not fit what is drawn now.` };
}

function isContradicted(rule: EffectiveRule, level: Level, was: Level | undefined): boolean {
  if (!level.lookedFor?.includes(rule.id)) return false;
  if (rule.subject.of === 'sun') return wasVouched(was, rule) && standsElsewhere(level.detectors, was?.detectors ?? []);
  return subjectsOf(rule, modelOf(level)).length > 0;
}

const wasVouched = (was: Level | undefined, { id }: EffectiveRule): boolean => was?.lookedFor?.includes(id) ?? false;

/** Whether a detector stands where none stood before. */
function standsElsewhere(detectors: readonly Detector[], before: readonly Detector[]): boolean {
  const spot = ({ id, at, base }: Detector) => JSON.stringify([id, at, base]);
  const known = new Set(before.map(spot));
  return detectors.some((detector) => !known.has(spot(detector)));
}
