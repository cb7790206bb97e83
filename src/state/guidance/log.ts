import type { Plan } from '../../../geometry/plan/model.ts';
import { counted, listed } from '../../../geometry/words.ts';
import { chainOf } from '../../job/log/chain.ts';
import { namedDetectors } from '../../job/log/detectors.ts';
import { logOf } from '../../job/log/edit.ts';
import { logGaps } from '../../job/log/gaps.ts';
import { type Hint, type SeenLevel, WEIGHT } from './hint.ts';
import { isPlaced } from './time.ts';

/** Once the detectors are set out: what their log lacks first. A gap is never "missing": a result stands without it, its paper does not. A chain that contradicts itself is no chain. */
export function logHints(plan: Plan, levels: readonly SeenLevel[]): readonly Hint[] {
  if (!isPlaced(levels) || plan.visit.start === null) return [];
  const act = { kind: 'stage', label: 'Look at the log', stage: 'log' } as const;
  const doubtful = namedDetectors(plan).filter(({ id }) => chainOf(plan, id).doubtful);
  const [gap] = logGaps(plan);
  const hints: Hint[] = gap ? [{ text: gap, act, missing: false, weight: WEIGHT.house }] : [];
  if (doubtful.length === 0) return hints;
  const text = `Times or hands in the log of ${listed(doubtful.map(({ name }) => name))} do not fit.`;
  return [{ text, act, missing: true, weight: WEIGHT.house }, ...hints];
}

/** How many detectors have their number, in a few words; empty for none. */
export function logInWords(plan: Plan): string {
  const all = namedDetectors(plan);
  const numbered = all.filter(({ id }) => logOf(plan, id).serial.trim() !== '').length;
  return numbered === 0 ? '' : `${numbered} of ${counted(all.length, 'serial number')}.`;
}
