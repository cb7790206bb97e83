import type { Computed } from '../../geometry/recheck/compare.ts';

/** Returns how a verdict was computed: "twice", "once" with the cause, or "differs" with the values of both. Lengths in mm. */
export function verificationJson(computed: Computed) {
  if (computed.how === 'twice') return { computed: computed.how };
  if (computed.how === 'once') return { computed: computed.how, cause: computed.cause };
  const { how, first, second, rules } = computed;
  return { computed: how, differs: { first, second, rules } };
}
