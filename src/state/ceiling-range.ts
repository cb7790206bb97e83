import type { Mm } from '../../geometry/plan/model.ts';

/** Accepted ceiling heights, mm. A value outside is more likely a wrong unit than a lower crawl space or a higher hall. */
export const CEILINGS = { least: 300, most: 12_000 } as const;

/** Returns what is wrong with a height from floor to ceiling, mm; empty for nothing. */
export function ceilingRefusal(height: Mm): string {
  if (height >= CEILINGS.least && height <= CEILINGS.most) return '';
  return 'A ceiling is 1 ft to 39 ft (30 cm to 12 m) above the floor. Check the unit.';
}
