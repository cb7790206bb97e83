import type { Opening } from '../plan/model.ts';
import type { EffectiveRule } from '../rules/profiles.ts';
import { standsOnUnmeasured } from './distance-rules.ts';
import { type Case, leastRow, notRunRow, reasonRow } from './rows.ts';
import { exposureOf, hasGlass, hasNorth, nearestSun } from './sun-rays.ts';
import type { Row } from './types.ts';

/** The years and the longest exposure for which the sun is computed. */
const [FIRST, LAST] = [Date.UTC(1950, 0, 1), Date.UTC(2101, 0, 1)];
const LONGEST_MS = 396 * 86_400_000;

/**
 * Returns the row of direct sun at the height of the detector during the test: that of the opening with the nearest light. Not run while the
 * place of the house, north or the times of the test are missing; then a person may confirm that no sun reaches the spot.
 */
export function sunRows(one: Case, rule: EffectiveRule): Row[] {
  const { plan, level, layout, detector } = one;
  const clear: Row = { ...notRunRow(rule), verdict: 'clear', notRun: false };
  const outside = layout.holes.filter((hole) => hole.outside);
  if (outside.length === 0) return [clear];
  const vouched = level.lookedFor?.includes(rule.id) === true;
  const exposure = exposureOf(plan);
  if (!exposure) return [vouched ? clear : notRunRow(rule)];
  const windows = outside.filter(({ opening }) => hasGlass(opening));
  if (windows.length === 0) return [clear];
  if (!hasNorth(plan)) return [vouched ? clear : notRunRow(rule)];
  const { start, end } = exposure;
  if (end < start || start < FIRST || end >= LAST || end - start > LONGEST_MS)
    return [vouched ? clear : { ...reasonRow(rule, 'unknown'), required: rule.least }];
  const required = rule.least ?? 0;
  const heights = [detector.base, detector.base + detector.tall];
  const sun = nearestSun(layout, windows, exposure, detector.at, heights);
  // An unmeasured sill or head may let in more light, and the light falls elsewhere at another height.
  const open = vouched ? clear : notRunRow(rule);
  const met = standsOnUnmeasured(one) || windows.some(({ opening }) => isOpen(opening)) ? open : null;
  if (!sun) return [met ?? clear];
  // For a rule without a distance, the rim must stay out of the sun, and may touch it.
  const measured = required > 0 ? Math.max(0, sun.distance - detector.radius) : sun.distance - detector.radius;
  const row = leastRow(one, rule, sun.hole.opening.id, measured, { required });
  return [row.verdict === 'blocked' ? row : (met ?? row)];
}

/** Returns whether more light may come in because a height is not measured. */
const isOpen = ({ shade, bottomAnswered, topAnswered }: Opening): boolean =>
  shade !== 'covered' && shade !== 'well' && (bottomAnswered === false || topAnswered === false);
