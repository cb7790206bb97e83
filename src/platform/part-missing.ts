/** Shown when a part of the app that is loaded on demand cannot be loaded. */
export const PART_MISSING =
  'A part of Stillspot did not load. Your plan is unchanged. Check the network, then try again or reload the page.';

/** Throws `PART_MISSING` in place of the browser's own error message. */
export function partMissing(): never {
  throw new Error(PART_MISSING);
}
