import type { Plan } from '../plan/model.ts';
import { type EffectiveRule, effectiveRules } from '../rules/profiles.ts';
import { fixtureRows, machineRows, objectRows, openingRows, supportRows, wallRows } from './distance-rules.ts';
import { ceilingRows, companionRows, heightRows, levelRow, roomRow } from './position-rules.ts';
import type { Case } from './rows.ts';
import { sunRows } from './sun-rows.ts';
import { type DetectorOpinion, type Opinion, type Row, worst } from './types.ts';
import { wallLayout } from './wall-layout.ts';

/** The result of the second computation, or why there is none. */
export type SecondOpinion = ({ readonly ok: true } & Opinion) | { readonly ok: false; readonly cause: string };

/**
 * Checks every detector against every rule a second time, by the simplest methods: on turf, from the words of the plan
 * file's description, sharing only the rule table with the engine. Reports every subject, not only the nearest.
 * If turf throws or limits are exceeded, returns the cause and nothing else.
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
  const layout = wallLayout(level);
  return level.detectors.map((detector) => {
    const one: Case = { plan, level, layout, detector };
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
