import { TONES, type Tone } from '../../../geometry/messages/tone.ts';
import type { PlanPreview } from './records.ts';

/** What is said of the detectors of a plan with how many it is said of, the worst first. */
export function inOrderOfWorst(verdicts: PlanPreview['verdicts']): readonly (readonly [Tone, number])[] {
  return TONES.map((tone) => [tone, verdicts[tone]] as const).filter(([, count]) => count > 0);
}
