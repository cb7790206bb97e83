import type { Wall } from '../plan/model.ts';

type EndName = 'left' | 'right' | 'upper' | 'lower';

/** What the two ends of a wall are called by one who looks at the page: left and right, or upper and lower for a steep wall. */
export function wallEndNames({ from, to }: Pick<Wall, 'from' | 'to'>): Readonly<Record<'from' | 'to', EndName>> {
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]];
  if (Math.abs(dx) >= Math.abs(dy)) return dx >= 0 ? { from: 'left', to: 'right' } : { from: 'right', to: 'left' };
  return dy >= 0 ? { from: 'upper', to: 'lower' } : { from: 'lower', to: 'upper' };
}
