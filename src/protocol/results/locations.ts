import { areSideBySide } from '../../../geometry/check/side-by-side.ts';
import { listed } from '../../../geometry/messages/index.ts';
import type { Detector, Level, Plan } from '../../../geometry/plan/model.ts';
import type { Reading } from '../../../geometry/plan/test-record.ts';
import { detectorLabel } from '../detector-label.ts';

/** The detectors of one location and their results. */
export interface LocationResults {
  /** Mark of the pair; null for a single detector. */
  readonly pair: string | null;
  readonly level: Level;
  readonly detectors: readonly Detector[];
  /** In the order of `detectors`, at most one for each. */
  readonly readings: readonly Reading[];
  /** All results in the order of `detectors`; several for each of `duplicated`. */
  readonly recorded: readonly Reading[];
  /** Whether it is marked as a pair but too far apart: each detector is a separate location. */
  readonly apart: boolean;
  /** Detectors with more than one result: which one counts is not known. */
  readonly duplicated: readonly Detector[];
}

/**
 * Returns the results of a plan by location. Detectors of one pair mark, on one level and side by side, are one
 * location; every other detector is a separate one. Locations without a result are left out.
 */
export function resultsByLocation(plan: Plan): readonly LocationResults[] {
  return plan.levels
    .flatMap((level) => locationsOn(level).map((location) => resultsAt(plan, level, location)))
    .filter(({ readings }) => readings.length > 0);
}

/** Returns every location of a plan, with a result or without. */
export const locations = ({ levels }: Plan): readonly Location[] => levels.flatMap(locationsOn);

export type Location = Pick<LocationResults, 'pair' | 'detectors' | 'apart'>;

function locationsOn({ detectors }: Level): readonly Location[] {
  const locations: Location[] = [];
  const done = new Set<Detector>();
  for (const detector of detectors) {
    if (done.has(detector)) continue;
    const { pair } = detector;
    const marked = pair === null ? [detector] : detectors.filter((other) => other.pair === pair);
    for (const one of marked) done.add(one);
    if (areCollocated(marked)) locations.push({ pair, detectors: marked, apart: false });
    else for (const one of marked) locations.push({ pair, detectors: [one], apart: true });
  }
  return locations;
}

/** Compares every two: of three in a row, the outer two may be too far apart. */
function areCollocated(detectors: readonly Detector[]): boolean {
  return detectors.every((a, i) => detectors.slice(i + 1).every((b) => areSideBySide(a, b)));
}

function resultsAt(plan: Plan, level: Level, { pair, detectors, apart }: Location): LocationResults {
  const of = (detector: Detector) => plan.readings.filter((reading) => reading.detector === detector.id);
  return {
    pair,
    level,
    detectors,
    readings: detectors.flatMap((detector) => of(detector).slice(0, 1)),
    recorded: detectors.flatMap(of),
    apart,
    duplicated: detectors.filter((detector) => of(detector).length > 1),
  };
}

/** Returns the name of a location: "A1 and A2, side by side". */
export function locationName({ set }: { readonly set: Pick<LocationResults, 'detectors'> }): string {
  const names = set.detectors.map(detectorLabel);
  return names.length > 1 ? `${listed(names)}, side by side` : (names[0] ?? '');
}
