/** Checks that each text of a drawn page is in a picture of it. */
import type { Pixels } from './picture-difference.ts';
import { type SheetText, sheetTexts } from './sheet-texts.ts';

/**
 * Range of the ink in one picture over that in the other within which a text is the same: edges of letters are smoothed in different ways.
 * Over 3,100 texts of samples the least was 0.87 and the most 1.004; a missing text gives 0.
 */
const ALIKE = { least: 0.8, most: 1.2 } as const;
/** The same range for one letter or figure, whose box is mostly edges. */
const ALIKE_ONE = { least: 0.6, most: 1.6 } as const;
/** Length of each end of a text that is compared, how far it is searched, and how far it may be moved, mm; a space is wider than `MOVED`. */
const END = 20;
const FAR = 2;
const MOVED = 0.2;
/** Factor by which a shifted text must match better to count as moved: side-by-side strokes match almost as well when shifted by two. */
const CLEARLY = 1.5;
const MM_PER_INCH = 25.4;

/** Darkness of the green channel, summed across the text, at each px along it. */
type Profile = readonly number[];

/**
 * Returns every horizontal or vertical text whose ink at its place in `picture` is not that in `other`, or is moved.
 * @param dpi px per inch of both pictures
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
