import { useEffect, useMemo, useRef, useState } from 'react';
import type { Detector } from '../../../../geometry/plan/model.ts';
import { type BestPlace, type PlaceQuery, searchInputs } from '../../../platform/worker/place-query.ts';
import { cancelRequests, requestPlaces } from '../../../platform/worker/places-client.ts';
import { modelOf, selectLevelAtRest, selectProbeAtRest } from '../../../state/selectors.ts';
import { blockedLast, type DescribedPlace, describePlace } from '../../../state/spots.ts';
import { useAppStore } from '../../../state/store.ts';

/** A search starts when nothing has changed for this long, ms. */
const REST_MS = 120;

export interface Best {
  readonly places: readonly BestPlace[];
  /** Whether they are those of the current plan. */
  readonly settled: boolean;
  readonly wanted: PlaceQuery;
}

/**
 * Returns the best places of the level in view at the shaded height, computed by a worker. A drag has no effect until it ends. The previous
 * result is returned until a new one is ready.
 */
export function useBestPlaces(line: string, asked: Pick<PlaceQuery, 'members' | 'count' | 'onFurniture'>): Best {
  const plan = useAppStore((state) => state.plan);
  const levelId = useAppStore((state) => selectLevelAtRest(state).id);
  const probe = useAppStore(selectProbeAtRest);
  const wanted: PlaceQuery = { ...asked, probe };
  const inputs = useSame(searchInputs(plan, levelId, wanted));
  const [found, setFound] = useState<Found | null>(null);
  const latest = useRef({ plan, levelId, wanted });
  latest.current = { plan, levelId, wanted };
  useEffect(() => {
    const timer = setTimeout(() => {
      const { plan: now, levelId: level, wanted: sought } = latest.current;
      requestPlaces(line, now, level, sought, (places) => {
        setFound({ inputs, question: questionOf(level, sought), places });
      });
    }, REST_MS);
    return () => {
      clearTimeout(timer);
      cancelRequests(line);
    };
  }, [line, inputs]);
  const places = found?.question === questionOf(levelId, wanted) ? found.places : NONE;
  return { places, settled: found?.inputs === inputs, wanted };
}

interface Found {
  readonly inputs: readonly unknown[];
  readonly question: string;
  readonly places: readonly BestPlace[];
}

/** Returns a key of the search: a result with another key is never shown. */
function questionOf(levelId: string, { members, onFurniture }: PlaceQuery): string {
  return `${levelId} ${members} ${onFurniture}`;
}

const NONE: readonly BestPlace[] = [];

/** Returns the same array as long as its members are the same. */
function useSame<T>(inputs: readonly T[]): readonly T[] {
  const kept = useRef(inputs);
  const same = kept.current.length === inputs.length && kept.current.every((one, index) => one === inputs[index]);
  if (!same) kept.current = inputs;
  return kept.current;
}

/**
 * Returns each place with its description, for new detectors or for the detectors `moved` that would move there. Places that existing
 * detectors block come last. Memoized by plan, places and detectors.
 */
export function useDescribedPlaces(
  { places, wanted: { probe } }: Best,
  moved: readonly Detector[] = NOBODY,
): readonly DescribedPlace[] {
  const plan = useAppStore((state) => state.plan);
  const model = useAppStore((state) => modelOf(selectLevelAtRest(state)));
  const who = useSame(moved);
  return useMemo(
    () => blockedLast(places.map((place) => ({ place, words: describePlace(plan, model, probe, place, who) }))),
    [places, plan, model, probe, who],
  );
}

const NOBODY: readonly Detector[] = [];
