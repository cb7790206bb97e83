/** Degrees north and east; null: not known. */
export interface Coordinates {
  readonly latitude: number | null;
  readonly longitude: number | null;
}

/** Returns what an older location was, after what is entered now; empty where there was none. */
export function wasWords({ latitude, longitude }: Coordinates): string {
  return latitude === null || longitude === null ? '' : ` It was ${latitude}, ${longitude}; Undo restores that.`;
}
