/** Worker that searches for the best places, one request after the other. */
import { findPlaces } from './find-places.ts';
import type { PlacesRequest, PlacesResponse } from './places-messages.ts';

addEventListener('message', ({ data: { number, plan, levelId, wanted } }: MessageEvent<PlacesRequest>) => {
  const response: PlacesResponse = { number, places: findPlaces(plan, levelId, wanted) };
  postMessage(response);
});
