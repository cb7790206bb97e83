import { LIMIT_TOLERANCE } from '../../../geometry/check/subjects.ts';
import { listed } from '../../../geometry/messages/index.ts';
import type { Detector, Level, Plan } from '../../../geometry/plan/model.ts';
import type { Reading } from '../../../geometry/plan/test-record.ts';
import { distance } from '../../../geometry/plane/point.ts';
import { detectorLabel } from '../detector-label.ts';

/**
 * Rim to rim in plan: farther apart, detectors are two locations and never averaged. 8 in from the outer surface of each
 * device: ANSI/AARST MALB-2014 with 1/21 revisions, 8.1.2(a); MAH-2019, 8.5.2(d).
 */
const COLLOCATED_WITHIN = 203.2;

/** The detectors of one location and what the laboratory said of them. */
export interface LocationResults {
  /** Mark of the pair; null for a detector by itself. */
  readonly pair: string | null;
  readonly level: Level;
  readonly detectors: readonly Detector[];
  /** In the order of `detectors`; those without a result are left out. */
  readonly readings: readonly Reading[];
  /** Marked as a pair, and yet more than one location: each is judged alone. */
  readonly apart: boolean;
  /** A detector with more than one result: which of them counts cannot be told. */
  readonly duplicated: readonly Detector[];
}

/**
 * The results of a plan by location. Detectors of one mark, on one level and within `ONE_LOCATION` of each other, are one set; all
 * others stand alone. Sets without any result are left out.
 */
export function resultsByLocation(plan: Plan): readonly LocationResults[] {
  return plan.levels
    .flatMap((level) => locationsOn(level).map((location) => resultsAt(plan, level, location)))
    .filter(({ readings }) => readings.length > 0);
}

/** Each place where a plan measures, with a result or without. */
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

/** Every one beside every other: of three in a row the outer two may be too far apart. */
function areCollocated(detectors: readonly Detector[]): boolean {
  return detectors.every((a, i) =>
    detectors
      .slice(i + 1)
      .every((b) => distance(a.at, b.at) - a.radius - b.radius <= COLLOCATED_WITHIN + LIMIT_TOLERANCE),
  );
}

function resultsAt(plan: Plan, level: Level, { pair, detectors, apart }: Location): LocationResults {
  const of = (detector: Detector) => plan.readings.filter((reading) => reading.detector === detector.id);
  return {
    pair,
    level,
    detectors,
    readings: detectors.flatMap((detector) => of(detector).slice(0, 1)),
    apart,
    duplicated: detectors.filter((detector) => of(detector).length > 1),
  };
}

/** The location in words: "A1 and A2, side by side". */
export function locationName({ set }: { readonly set: Pick<LocationResults, 'detectors'> }): string {
  const names = set.detectors.map(detectorLabel);
  return names.length > 1 ? `${listed(names)}, side by side` : (names[0] ?? '');
}
