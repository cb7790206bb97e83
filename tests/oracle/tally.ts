/** Results of a comparison of many levels: the largest deviations, and how much was compared. */
export interface Tally {
  levels: number;
  rooms: number;
  rows: number;
  /** The largest deviation of a distance, mm. */
  worstDistance: number;
  /** Seed and row of the worst distance. */
  worstDistanceAt: string;
  verdicts: number;
  /** Verdicts that are within rounding of a limit: either is right. */
  onTheEdge: number;
  floors: number;
  /** The largest deviation of a floor area, mm². */
  worstFloor: number;
  regions: number;
  /** Regions that are not empty. */
  openRegions: number;
  /** The largest deviation of a region, mm², and as a fraction of the region. */
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
