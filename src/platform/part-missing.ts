/** Shown where a part of the app that is loaded on demand cannot be loaded. */
export const PART_MISSING =
  'A part of Stillspot did not come through. Your plan is not touched. Look at the network, then try again or load the page again.';

/** In place of the browser's own words for it. */
export function partMissing(): never {
  throw new Error(PART_MISSING);
}
