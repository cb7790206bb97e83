import { isDrawn } from '../../geometry/check/subjects.ts';
import { withoutNoneHere } from '../../geometry/edit/index.ts';
import { withSunWordsSettled } from '../../geometry/edit/sun-word.ts';
import { listed } from '../../geometry/messages/index.ts';
import type { Detector, Level, Plan, Wall } from '../../geometry/plan/model.ts';
import { type EffectiveRule, effectiveRules } from '../../geometry/rules/profiles.ts';
import { modelOf } from './selectors.ts';

/**
 * Returns the plan after an edit without the answers "none here" that the drawing now contradicts. The answer that no sun reaches the spot
 * is also taken back for a detector at another spot, if light could enter in a new way, and for other days or another place than those that
 * it was given for. `words` says what was taken back; empty for nothing.
 */
export function withoutContradictions(before: Plan, after: Plan): { readonly plan: Plan; readonly words: string } {
  const { plan, gone } = withoutDrawn(before, after);
  const drawn = gone.length === 0 ? '' : `The answer ${listed(gone)} is taken back: it does not fit what is drawn now.`;
  const settled = withSunWordsSettled(before, plan);
  const rule = effectiveRules(after.protocol).find(({ subject }) => subject.of === 'sun');
  const outlived =
    rule && settled.outlived
      ? `The answer ${quotedAnswer(rule)} is taken back: it was given for ${GIVEN_FOR[settled.outlived]}. Answer it again.`
      : '';
  return { plan: settled.plan, words: [drawn, outlived].filter(Boolean).join(' ') };
}

const GIVEN_FOR = { days: 'other days', place: 'another place or north' } as const;

function withoutDrawn(before: Plan, after: Plan): { readonly plan: Plan; readonly gone: readonly string[] } {
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
    gone.push(...rules.map(quotedAnswer));
  }
  return { plan, gone };
}

const quotedAnswer = ({ absent, name }: EffectiveRule): string => `"${absent ?? name}"`;

function isContradicted(rule: EffectiveRule, level: Level, was: Level | undefined): boolean {
  if (!level.lookedFor?.includes(rule.id)) return false;
  if (rule.subject.of === 'sun')
    return was !== undefined && wasVouched(was, rule) && (standsElsewhere(level, was) || isOpenedUp(level, was));
  return isDrawn(rule, modelOf(level));
}

const wasVouched = (was: Level, { id }: EffectiveRule): boolean => was.lookedFor?.includes(id) ?? false;

/** Whether a detector is new, or at another place or height than before. */
function standsElsewhere({ detectors }: Level, was: Level): boolean {
  const spot = ({ id, at, base }: Detector) => JSON.stringify([id, at, base]);
  return hasNew(detectors.map(spot), was.detectors.map(spot));
}

/**
 * Whether light could enter where none could before: by an opening that is new, changed or no longer covered, or past a wall that was
 * deleted or changed.
 */
function isOpenedUp(level: Level, was: Level): boolean {
  if (level.walls === was.walls && level.openings === was.openings) return false;
  const wall = ({ id, from, to, thickness, side }: Wall) => JSON.stringify([id, from, to, thickness, side]);
  const ways = ({ openings }: Level) =>
    openings
      .filter(({ shade }) => shade !== 'covered' && shade !== 'well')
      .map(({ id, wall: on, kind, offset, width, bottom, top, glazed, shade = null }) =>
        JSON.stringify([id, on, kind, offset, width, bottom, top, glazed, shade]),
      );
  return hasNew(ways(level), ways(was)) || hasNew(was.walls.map(wall), level.walls.map(wall));
}

function hasNew(now: readonly string[], before: readonly string[]): boolean {
  const known = new Set(before);
  return now.some((each) => !known.has(each));
}
