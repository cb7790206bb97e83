/** Whether each text of a drawn page is in a picture of it. */
import type { Pixels } from './picture-difference.ts';
import { sheetTexts } from './sheet-texts.ts';

/**
 * Ink in the one picture as a share of that in the other, within which a text is the same: edges of letters are smoothed in different ways.
 * Of 3,100 texts of samples the least was 0.87 and the most 1.004; a text that is missing gives 0.
 */
const ALIKE = { least: 0.8, most: 1.2 } as const;
/** Of one letter or figure, whose box is mostly edges. */
const ALIKE_ONE = { least: 0.6, most: 1.6 } as const;
const MM_PER_INCH = 25.4;

/** Returns every text that runs across and whose place in `picture` has not the ink that it has in `other`. @param dpi px to the inch of both */
export function textsWithOtherInk(svg: string, picture: Pixels, other: Pixels, dpi: number): readonly string[] {
  const scale = dpi / MM_PER_INCH;
  return sheetTexts(svg).flatMap(({ text, x, y, width, height, turn }) => {
    if (turn !== 0 || !/[a-z0-9]/i.test(text)) return [];
    const [left, right] = [Math.floor((x - width / 2) * scale), Math.ceil((x + width / 2) * scale)];
    const [top, bottom] = [Math.floor((y - height / 2) * scale), Math.ceil((y + height / 2) * scale)];
    const share = inkIn(picture, left, top, right, bottom) / inkIn(other, left, top, right, bottom);
    const { least, most } = text.length > 1 ? ALIKE : ALIKE_ONE;
    return share >= least && share <= most ? [] : [`"${text}" at ${x}, ${y}: ${share.toFixed(3)}`];
  });
}

/** Darkness of the green channel, summed. */
function inkIn({ width, data }: Pixels, left: number, top: number, right: number, bottom: number): number {
  let ink = 0;
  for (let y = top; y < bottom; y++)
    for (let x = left; x < right; x++) ink += 255 - (data[4 * (y * width + x) + 1] ?? 255);
  return ink;
}
