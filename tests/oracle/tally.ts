/** What a comparison of many levels has seen: the largest deviations, and how much was compared at all. */
export interface Tally {
  levels: number;
  rooms: number;
  rows: number;
  /** mm */
  worstDistance: number;
  /** Seed and row of the worst distance. */
  worstDistanceAt: string;
  verdicts: number;
  /** Verdicts that hang on less than the rounding of both sides: either answer is right. */
  onTheEdge: number;
  floors: number;
  /** Square mm. */
  worstFloor: number;
  regions: number;
  /** Regions that are not empty. */
  openRegions: number;
  /** Square mm, and as a share of the region. */
  worstRegion: number;
  worstRegionShare: number;
  samples: number;
  samplesInside: number;
  samplesOnTheEdge: number;
  nearest: number;
}

export function emptyTally(): Tally {
  return {
    levels: 0,
    rooms: 0,
    rows: 0,
    worstDistance: 0,
    worstDistanceAt: '',
    verdicts: 0,
    onTheEdge: 0,
    floors: 0,
    worstFloor: 0,
    regions: 0,
    openRegions: 0,
    worstRegion: 0,
    worstRegionShare: 0,
    samples: 0,
    samplesInside: 0,
    samplesOnTheEdge: 0,
    nearest: 0,
  };
}
