/** Whether each text of a drawn page is in a picture of it. */
import type { Pixels } from './picture-difference.ts';
import { type SheetText, sheetTexts } from './sheet-texts.ts';

/**
 * Ink in the one picture as a share of that in the other, within which a text is the same: edges of letters are smoothed in different ways.
 * Of 3,100 texts of samples the least was 0.87 and the most 1.004; a text that is missing gives 0.
 */
const ALIKE = { least: 0.8, most: 1.2 } as const;
/** Of one letter or figure, whose box is mostly edges. */
const ALIKE_ONE = { least: 0.6, most: 1.6 } as const;
/** mm of a text at either end that must be at the same place, how far it is looked for, and how far it may be moved: a space is wider. */
const END = 20;
const FAR = 2;
const MOVED = 0.2;
/** Where the ink is as much more alike when moved, it is moved: strokes side by side are nearly alike at every second one. */
const CLEARLY = 1.5;
const MM_PER_INCH = 25.4;

/** Darkness of the green channel, summed across the text, at each px along it. */
type Profile = readonly number[];

/**
 * Returns every text that runs across or up the page and whose place in `picture` has not the ink that it has in `other`, or has it
 * elsewhere. @param dpi px to the inch of both
 */
export function textsWithOtherInk(svg: string, picture: Pixels, other: Pixels, dpi: number): readonly string[] {
  const scale = dpi / MM_PER_INCH;
  return sheetTexts(svg).flatMap((each) => {
    const { text, x, y, turn } = each;
    if (turn % 90 !== 0 || !/[a-z0-9]/i.test(text)) return [];
    const [one, two] = [profileOf(picture, each, scale), profileOf(other, each, scale)];
    const share = inkOf(one) / inkOf(two);
    const { least, most } = text.length > 1 ? ALIKE : ALIKE_ONE;
    if (!(share >= least && share <= most)) return [`"${text}" at ${x}, ${y}: ${share.toFixed(3)} of the ink`];
    const end = Math.ceil(END * scale);
    const ends = [(profile: Profile) => profile.slice(0, end), (profile: Profile) => profile.slice(-end)];
    return ends.some((of) => isMoved(of(one), of(two), scale)) ? [`"${text}" at ${x}, ${y}: moved`] : [];
  });
}

function inkOf(profile: Profile): number {
  return profile.reduce((sum, ink) => sum + ink, 0);
}

function isMoved(one: Profile, two: Profile, scale: number): boolean {
  const shifts = Array.from({ length: 2 * Math.ceil(FAR * scale) + 1 }, (_, i) => i - Math.ceil(FAR * scale));
  const unlike = (shift: number) => inkOf(one.map((ink, at) => Math.abs(ink - (two[at + shift] ?? 0))));
  const least = (of: readonly number[]) => Math.min(...of.map(unlike));
  return least(shifts.filter((shift) => Math.abs(shift) <= MOVED * scale)) > CLEARLY * least(shifts);
}

function profileOf({ width, data }: Pixels, { x, y, width: along, height: over, turn }: SheetText, scale: number) {
  const isAcross = turn % 180 === 0;
  const [across, down] = isAcross ? [along, over] : [over, along];
  const [left, right] = [Math.floor((x - across / 2) * scale), Math.ceil((x + across / 2) * scale)];
  const [top, bottom] = [Math.floor((y - down / 2) * scale), Math.ceil((y + down / 2) * scale)];
  const profile = new Array<number>(isAcross ? right - left : bottom - top).fill(0);
  for (let v = top; v < bottom; v++)
    for (let u = left; u < right; u++) {
      const at = isAcross ? u - left : v - top;
      profile[at] = (profile[at] ?? 0) + 255 - (data[4 * (v * width + u) + 1] ?? 255);
    }
  return profile;
}
