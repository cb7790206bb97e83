/** Looks for good places off the main thread, one call after the other, so that no frame waits for them. */
import { findPlaces } from './find-places.ts';
import type { PlacesRequest, PlacesResponse } from './places-messages.ts';

addEventListener('message', ({ data: { number, plan, levelId, wanted } }: MessageEvent<PlacesRequest>) => {
  const answer: PlacesResponse = { number, places: findPlaces(plan, levelId, wanted) };
  postMessage(answer);
});
