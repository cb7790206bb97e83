import type { Plan } from '../../../geometry/plan/model.ts';
import type { BestPlace, PlaceQuery } from './find-places.ts';

/** What the page asks of the worker that looks for places, and what comes back. */
export interface PlacesRequest {
  readonly number: number;
  readonly plan: Plan;
  readonly levelId: string;
  readonly wanted: PlaceQuery;
}
export interface PlacesResponse {
  readonly number: number;
  readonly places: readonly BestPlace[];
}
