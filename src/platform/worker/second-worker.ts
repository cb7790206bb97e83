/** Worker that computes the verdicts of a plan a second time; turf is loaded here, with the first request. */
import { recheck } from '../../../geometry/recheck/recheck.ts';
import type { RecheckRequest, RecheckResponse } from './recheck-messages.ts';

addEventListener('message', ({ data: { number, plan } }: MessageEvent<RecheckRequest>) => {
  const response: RecheckResponse = { number, opinion: recheck(plan) };
  postMessage(response);
});
