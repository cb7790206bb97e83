import type { Plan } from '../plan/model.ts';
import { type EffectiveRule, effectiveRules } from '../rules/profiles.ts';
import { fixtureRows, machineRows, objectRows, openingRows, supportRows, wallRows } from './distance-rules.ts';
import { readHouse } from './house.ts';
import type { Case } from './rows.ts';
import { type DetectorOpinion, type Opinion, type Row, worst } from './types.ts';
import { ceilingRows, companionRows, heightRows, levelRow, roomRow, sunRows } from './word-rules.ts';

/** What the second computation says, or why it could not say anything. */
export type SecondOpinion = ({ readonly ok: true } & Opinion) | { readonly ok: false; readonly cause: string };

/**
 * Every detector against every rule, computed again by the plainest way there is: on turf, straight from the words of the plan
 * file's description, with nothing of the engine but the table of rules. It tells of every subject, not only of the nearest.
 * Where turf throws, or there is too much of anything, the cause is told and nothing else.
 */
export function recheck(plan: Plan): SecondOpinion {
  try {
    return { ok: true, levels: plan.levels.map((level) => ({ id: level.id, detectors: detectorsOf(plan, level) })) };
  } catch (error) {
    return { ok: false, cause: error instanceof Error ? error.message : String(error) };
  }
}

function detectorsOf(plan: Plan, level: Plan['levels'][number]): DetectorOpinion[] {
  if (level.detectors.length === 0) return [];
  const house = readHouse(level);
  return level.detectors.map((detector) => {
    const one: Case = { plan, level, house, detector };
    const checks = effectiveRules(plan.protocol).flatMap((rule) => rowsOf(one, rule));
    return {
      id: detector.id,
      verdict: worst(checks.filter(({ notRun }) => !notRun).map(({ verdict }) => verdict)),
      checks,
    };
  });
}

function rowsOf(one: Case, rule: EffectiveRule): Row[] {
  const { subject } = rule;
  switch (subject.of) {
    case 'room':
      return [roomRow(one, rule, subject.barred)];
    case 'level':
      return [levelRow(one, rule, subject)];
    case 'height':
      return heightRows(one, rule);
    case 'ceiling':
      return ceilingRows(one, rule);
    case 'opening':
      return openingRows(one, rule, subject.inside);
    case 'outside-wall':
      return wallRows(one, rule, true);
    case 'inside-wall':
      return wallRows(one, rule, false);
    case 'fixture':
      return fixtureRows(one, rule, subject);
    case 'object':
      return objectRows(one, rule, subject.walls);
    case 'sun':
      return sunRows(one, rule);
    case 'companion':
      return companionRows(one, rule);
    case 'running':
      return machineRows(one, rule, subject.kinds);
    default:
      return supportRows(one, rule);
  }
}
