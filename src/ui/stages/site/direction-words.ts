import type { Site } from '../../../../geometry/plan/model.ts';

const SIDES: Readonly<Record<number, string>> = { 0: 'top', 90: 'right', 180: 'bottom', 270: 'left' };

/** Returns a direction on the page in words, from degrees clockwise from straight up. */
export function directionWords(degrees: number): string {
  const side = SIDES[degrees];
  return side ? `toward the ${side} of the page` : `${degrees}° clockwise from up the page`;
}

/** Returns a sentence with the previous north, after another is set; empty if it was not known. */
export function wasNorthWords({ north, northAnswered }: Site): string {
  return northAnswered === false ? '' : ` It was ${north}°; Undo restores that.`;
}

/** Added when north is set by a method that can be 10° off: a verdict on direct sun is then no more exact. */
export const ROUGH_NORTH =
  ' Where the sun falls is no more exact: keep well away from its edge, or find north by the sun.';
