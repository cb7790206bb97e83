/** The table of ZIP codes as the build packs it. */
export interface PackedPlaces {
  /** ZIP codes in rising order, and the middle of each in hundredths of a degree, as `textOfNumbers` writes them. */
  readonly zips: string;
  readonly latitudes: string;
  readonly longitudes: string;
  /** A line for each ZIP code, empty if it repeats the previous line. */
  readonly names: string;
  readonly states: string;
  /** Names of states by abbreviation. */
  readonly stateNames: Readonly<Record<string, string>>;
}

/** Filled in by `places-plugin.ts` from the packages that hold the table. */
export const PACKED: PackedPlaces = { zips: '', latitudes: '', longitudes: '', names: '', states: '', stateNames: {} };
