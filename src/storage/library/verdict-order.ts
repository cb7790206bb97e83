import { TONES, type Tone } from '../../../geometry/messages/tone.ts';
import type { PlanPreview } from './records.ts';

/** Returns the verdicts of a plan with the number of detectors that have each, the worst first. */
export function inOrderOfWorst(verdicts: PlanPreview['verdicts']): readonly (readonly [Tone, number])[] {
  return TONES.map((tone) => [tone, verdicts[tone]] as const).filter(([, count]) => count > 0);
}
