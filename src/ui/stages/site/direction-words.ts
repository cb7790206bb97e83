const SIDES: Readonly<Record<number, string>> = { 0: 'top', 90: 'right', 180: 'bottom', 270: 'left' };

/** Returns a direction on the page in words, from degrees clockwise from straight up. */
export function directionWords(degrees: number): string {
  const side = SIDES[degrees];
  return side ? `toward the ${side} of the page` : `${degrees}° clockwise from up the page`;
}
