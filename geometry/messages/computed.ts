import type { Plan } from '../plan/model.ts';
import type { Computed, ComputedFigure, Difference } from '../recheck/compare.ts';
import { effectiveRules } from '../rules/profiles.ts';

/**
 * Describes how a verdict was computed, in a sentence; if the two computations differ, every rule with both results.
 */
export function describeComputed(computed: Computed, plan: Plan): string {
  if (computed.how === 'twice') return 'Computed twice, in two ways.';
  if (computed.how === 'once') return `Computed once. The second computation gave no answer: ${computed.cause}.`;
  const { first, second, rules } = computed;
  const head = `Computed twice, in two ways that differ, so it is not decided: ${first} and ${second}.`;
  return [head, ...rules.map((difference) => differenceWords(difference, plan))].join(' ');
}

/** What to do if the two computations differ. */
export const SEND_THE_PLAN =
  'This is a fault of Stillspot, not of the drawing. Save the plan and send it to those who make Stillspot.';

function differenceWords({ rule, first, second }: Difference, { protocol }: Plan): string {
  const name = effectiveRules(protocol).find(({ id }) => id === rule)?.name ?? rule;
  return `${name}: ${formatResult(first)}; ${formatResult(second)}.`;
}

/** Formats to 0.1 mm in every display unit, because in inches the two results might look the same. */
function formatResult({ verdict, measured }: ComputedFigure): string {
  return measured === null ? verdict : `${measured.toFixed(1)} mm, ${verdict}`;
}
