import type { Mm } from '../plane/types.ts';

/** Above the head from here up, mm: 72 in, the highest that a detector may reach. What hangs there is drawn with broken lines. */
const OVERHEAD: Mm = 1828.8;

export function isOverhead({ bottom }: { readonly bottom: Mm }): boolean {
  return bottom >= OVERHEAD;
}
