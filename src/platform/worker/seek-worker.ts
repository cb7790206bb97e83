/** Looks for good places off the main thread, one call after the other, so that no frame waits for them. */
import { seekPlaces } from './seek.ts';
import type { SeekAnswer, SeekCall } from './seek-messages.ts';

addEventListener('message', ({ data: { number, plan, levelId, wanted } }: MessageEvent<SeekCall>) => {
  const answer: SeekAnswer = { number, places: seekPlaces(plan, levelId, wanted) };
  postMessage(answer);
});
