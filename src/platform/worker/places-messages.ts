import type { Plan } from '../../../geometry/plan/model.ts';
import type { BestPlace, PlaceQuery } from './place-query.ts';

/** Message to the worker that searches for places; its response has the same number. */
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
