import type { Plan } from '../../../geometry/plan/model.ts';
import { counted } from '../../../geometry/words.ts';
import { namedDetectors } from '../../job/log/detectors.ts';
import { logOf } from '../../job/log/edit.ts';
import { logGaps } from '../../job/log/gaps.ts';
import { type Hint, type SeenLevel, WEIGHT } from './hint.ts';
import { isPlaced } from './time.ts';

/** Once the detectors are set out: what their log lacks first. It is never "missing": a result stands without it, its paper does not. */
export function logHints(plan: Plan, levels: readonly SeenLevel[]): readonly Hint[] {
  if (!isPlaced(levels) || plan.visit.start === null) return [];
  const [text] = logGaps(plan);
  if (!text) return [];
  const act = { kind: 'stage', label: 'Look at the log', stage: 'log' } as const;
  return [{ text, act, missing: false, weight: WEIGHT.house }];
}

/** How many detectors have their number, in a few words; empty for none. */
export function logInWords(plan: Plan): string {
  const all = namedDetectors(plan);
  const numbered = all.filter(({ id }) => logOf(plan, id).serial.trim() !== '').length;
  return numbered === 0 ? '' : `${numbered} of ${counted(all.length, 'serial number')}.`;
}
