/** Computes the verdicts of a plan a second time, off the main thread: turf is loaded here, with the first call. */
import { recheck } from '../../../geometry/recheck/recheck.ts';
import type { RecheckRequest, RecheckResponse } from './recheck-messages.ts';

addEventListener('message', ({ data: { number, plan } }: MessageEvent<RecheckRequest>) => {
  const answer: RecheckResponse = { number, opinion: recheck(plan) };
  postMessage(answer);
});
