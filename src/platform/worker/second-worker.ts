/** Computes the verdicts of a plan a second time, off the main thread: turf is loaded here, with the first call. */
import { recheck } from '../../../geometry/recheck/recheck.ts';
import type { SecondAnswer, SecondCall } from './second-messages.ts';

addEventListener('message', ({ data: { number, plan } }: MessageEvent<SecondCall>) => {
  const answer: SecondAnswer = { number, opinion: recheck(plan) };
  postMessage(answer);
});
