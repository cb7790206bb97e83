import { openChecks } from '../../geometry/check/looked-for.ts';
import { NO_SUN_COMES_IN } from '../../geometry/check/sun.ts';
import type { DetectorReport } from '../../geometry/check/types.ts';
import { withNoneHere, withoutNoneHere } from '../../geometry/edit/index.ts';
import { describeCheck } from '../../geometry/messages/index.ts';
import type { Level, Plan } from '../../geometry/plan/model.ts';
import { type EffectiveRule, effectiveRules } from '../../geometry/rules/profiles.ts';
import type { RuleId } from '../../geometry/rules/types.ts';
import { formatRequired } from '../../geometry/units/index.ts';
import { SUN_HOLDS } from '../advice/sun-words.ts';
import { instantText, type Ms } from '../protocol/timing/clock.ts';
import { type CardAnswers, GROUP_IDS, type GroupId, withAnswers } from './answers.ts';
import { answersNow } from './made-again.ts';
import { groupsDrawn } from './room-plan.ts';
import { GROUPS } from './things.ts';

/** A point to look at: open until a person answers it, and again after they withdraw the answer. */
export interface LookPoint {
  readonly rule: RuleId;
  /** Name of the rule: "Sump pit". */
  readonly name: string;
  readonly words: string;
  /** Whether it was not looked at: the card is then not clear. */
  readonly isOpen: boolean;
  /** The statement that a press records; null if only other answers close the point, or if it was computed. */
  readonly says: string | null;
}

/**
 * Returns every point that the reports leave open or that a person has closed, and direct sun if it was computed, in profile order. Also
 * open are washers while they are not answered, because a plan file has no record of them, and direct sun while windows are not answered,
 * because it may come in through one.
 */
export function lookPoints(
  plan: Plan,
  level: Level,
  reports: readonly DetectorReport[],
  answers: CardAnswers,
): readonly LookPoint[] {
  const { lookedFor = [] } = level;
  const open = new Set(reports.flatMap((report) => openChecks(report).map(({ rule }) => rule)));
  const drawn = groupsDrawn(answers);
  if (!drawn.has('washer-dryer') && !answers.none.includes('washer-dryer')) open.add('washer-dryer');
  if (open.has('outside-opening') && !lookedFor.includes('direct-sun')) open.add('direct-sun');
  const isClosed = (id: RuleId) =>
    lookedFor.includes(id) || (isGroup(id) && !drawn.has(id) && answers.none.includes(id));
  return effectiveRules(plan.protocol).flatMap((rule): LookPoint[] => {
    const { id, name } = rule;
    const point = { rule: id, name, says: saysOf(id) };
    if (open.has(id)) return [{ ...point, words: openWords(plan, rule, reports), isOpen: true }];
    const sun = id === 'direct-sun' ? sunWords(plan, level, reports) : '';
    if (sun) return [{ ...point, words: `${name}: ${sun} ${SUN_HOLDS}`, isOpen: false, says: null }];
    return isClosed(id) ? [{ ...point, words: closedWords(id, name), isOpen: false }] : [];
  });
}

const isGroup = (rule: string): rule is GroupId => (GROUP_IDS as readonly string[]).includes(rule);

/** Returns the check of the nearest direct sun in words, or that none comes in; empty if direct sun was not computed. */
function sunWords(plan: Plan, level: Level, reports: readonly DetectorReport[]): string {
  const rows = reports
    .flatMap(({ checks }) => checks)
    .filter(({ rule, measured, reason }) => rule === 'direct-sun' && (measured !== null || reason === NO_SUN_COMES_IN));
  const [nearest] = rows.sort((a, b) => (a.measured ?? Infinity) - (b.measured ?? Infinity));
  return nearest ? describeCheck(nearest, plan, level) : '';
}

function openWords({ display }: Plan, { id, name, least }: EffectiveRule, reports: readonly DetectorReport[]): string {
  if (id === 'support') return 'What carries it: not entered. Something firm, under its whole foot.';
  if (id === 'height-band')
    return `${name}: nobody has measured what it stands on. Measure it, and enter how high its top is.`;
  if (id === 'ceiling')
    return `${name}: nobody has measured it. It has to be ${formatRequired(least ?? 0, display.length)} above the kit. Measure the ceiling and enter it, or choose a lower place.`;
  if (isGroup(id))
    return `${name}: nobody has looked. It has to be ${formatRequired(least ?? 0, display.length)} away.`;
  const reason = reports.flatMap(openChecks).find(({ rule }) => rule === id)?.reason;
  return `${name}: not checked. ${reason ?? 'Nobody has looked for windows. Keep out of direct sun.'}`.trim();
}

const closedWords = (rule: RuleId, name: string): string =>
  `${name}: none ${rule === 'direct-sun' ? 'reaches the spot' : 'on this floor'}. You have looked.`;

function saysOf(rule: RuleId): string | null {
  if (rule === 'direct-sun') return 'I looked: no direct sun reaches the spot';
  return isGroup(rule) ? `I looked on this whole floor: no ${GROUPS[rule].words}` : null;
}

/** Returns the plan with an open point closed by a person at `now`, ms, or a closed one opened again. */
export function withLooked(plan: Plan, levelId: string, { rule, isOpen }: LookPoint, now: Ms): Plan {
  const answers = answersNow(plan);
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
