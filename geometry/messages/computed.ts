import type { Plan } from '../plan/model.ts';
import type { Computed, Difference, Figure } from '../recheck/compare.ts';
import { effectiveRules } from '../rules/profiles.ts';

/** How a verdict was come by, in a sentence; of one that the two computations differ on, every rule with both figures. */
export function describeComputed(computed: Computed, plan: Plan): string {
  if (computed.how === 'twice') return 'Computed twice, in two ways.';
  if (computed.how === 'once') return `Computed once. The second computation gave no answer: ${computed.cause}.`;
  const { first, second, rules } = computed;
  const head = `Computed twice, in two ways that differ, so it is not decided: ${first} and ${second}.`;
  return [head, ...rules.map((difference) => differenceWords(difference, plan))].join(' ');
}

/** What to do where the two computations differ. */
export const SEND_THE_PLAN =
  'This is a fault of Stillspot, not of the drawing. Save the plan and send it to those who make Stillspot.';

function differenceWords({ rule, first, second }: Difference, { protocol }: Plan): string {
  const name = effectiveRules(protocol).find(({ id }) => id === rule)?.name ?? rule;
  return `${name}: ${figureWords(first)}; ${figureWords(second)}.`;
}

/** To a tenth of a millimetre in any unit of display: in inches the two might look the same. */
function figureWords({ verdict, measured }: Figure): string {
  return measured === null ? verdict : `${measured.toFixed(1)} mm, ${verdict}`;
}
