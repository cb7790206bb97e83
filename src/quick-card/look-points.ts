import { openChecks } from '../../geometry/check/looked-for.ts';
import type { DetectorReport } from '../../geometry/check/types.ts';
import { withNoneHere, withoutNoneHere } from '../../geometry/edit/index.ts';
import type { Level, Plan } from '../../geometry/plan/model.ts';
import { type EffectiveRule, effectiveRules } from '../../geometry/rules/profiles.ts';
import type { RuleId } from '../../geometry/rules/types.ts';
import { formatRequired } from '../../geometry/units/index.ts';
import { instantText, type Ms } from '../protocol/timing/clock.ts';
import { answersOf, type CardAnswers, GROUP_IDS, type GroupId, withAnswers } from './answers.ts';
import { groupsDrawn } from './room-plan.ts';
import { GROUPS } from './things.ts';

/** What somebody has to look at: open until a person says so, and open again when they take it back. */
export interface LookPoint {
  readonly rule: RuleId;
  readonly words: string;
  /** Nobody has looked: no all-clear. */
  readonly isOpen: boolean;
  /** What a person says who has looked; null where only other answers help. */
  readonly says: string | null;
}

/** Returns every point that the reports leave open or that a person has closed, in profile order. Washers, of which a plan file has no record, are among them. */
export function lookPoints(
  plan: Plan,
  { lookedFor = [] }: Level,
  reports: readonly DetectorReport[],
  answers: CardAnswers,
): readonly LookPoint[] {
  const open = new Set(reports.flatMap((report) => openChecks(report).map(({ rule }) => rule)));
  const drawn = groupsDrawn(answers);
  if (!drawn.has('washer-dryer') && !answers.none.includes('washer-dryer')) open.add('washer-dryer');
  const isClosed = (id: RuleId) =>
    lookedFor.includes(id) || (isGroup(id) && !drawn.has(id) && answers.none.includes(id));
  return effectiveRules(plan.protocol).flatMap((rule): LookPoint[] => {
    const { id, name } = rule;
    if (open.has(id)) return [{ rule: id, words: openWords(plan, rule), isOpen: true, says: saysOf(id) }];
    return isClosed(id) ? [{ rule: id, words: `${name}: you have looked.`, isOpen: false, says: saysOf(id) }] : [];
  });
}

const isGroup = (rule: string): rule is GroupId => (GROUP_IDS as readonly string[]).includes(rule);

function openWords({ display }: Plan, { id, name, least }: EffectiveRule): string {
  const own = OPEN_WORDS[id];
  if (own) return own;
  if (!isGroup(id)) return `${name}: not checked.`;
  return `${name}: nobody has looked. It has to be ${formatRequired(least ?? 0, display.length)} away.`;
}

const OPEN_WORDS: Readonly<Partial<Record<RuleId, string>>> = {
  'direct-sun': 'Direct sun: not checked. It must never shine on the spot.',
  support: 'What carries it: not entered. Something firm, under its whole foot.',
};

function saysOf(rule: RuleId): string | null {
  if (rule === 'direct-sun') return 'I looked: no direct sun reaches the spot';
  return isGroup(rule) ? `I looked: no ${GROUPS[rule].words} on this floor` : null;
}

/** Returns the plan with a point closed by a person who has looked, at `now`, or opened again. */
export function withLooked(plan: Plan, levelId: string, { rule, isOpen }: LookPoint, now: Ms): Plan {
  const answers = answersOf(plan);
  const noted =
    !answers || !isGroup(rule)
      ? plan
      : withAnswers(plan, {
          ...answers,
          none: isOpen ? [...answers.none, rule] : answers.none.filter((each) => each !== rule),
        });
  if (isGroup(rule) && GROUPS[rule].rule === null) return noted;
  const look = { by: '', at: instantText(now, plan.site.timeZone) };
  return isOpen ? withNoneHere(noted, levelId, rule, look) : withoutNoneHere(noted, levelId, [rule]);
}
