import type { Computed } from '../../geometry/recheck/compare.ts';

/** How a verdict was come by: "twice", "once" with the cause, "differs" with the figures of both. Lengths in mm. */
export function computedAsJson(computed: Computed) {
  if (computed.how === 'twice') return { computed: computed.how };
  if (computed.how === 'once') return { computed: computed.how, cause: computed.cause };
  const { how, first, second, rules } = computed;
  return { computed: how, differs: { first, second, rules } };
}
