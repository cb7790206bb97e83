/** Layout problems of the texts of a drawn page. */

import { overlap } from '../../src/drawing/labels/placer.ts';
import { slotCorners } from '../../src/drawing/labels/slot.ts';
import { frameOf, sizeOfPage } from '../../src/report/paper.ts';
import { sheetTexts } from './sheet-texts.ts';

/** Tolerance of an overlap, mm: letters have side bearings. */
const TOUCH = 0.1;

/** Returns every text outside the frame or over another one, and every number that is NaN. */
export function pageProblems(sheets: readonly string[]): readonly string[] {
  return sheets.flatMap((svg, sheet) => {
    const { x, y, width, height } = frameOf(sizeOfPage(svg));
    if (/NaN|Infinity|undefined/.test(svg)) return [`sheet ${sheet + 1}: a figure that is none`];
    const texts = sheetTexts(svg);
    const outside = texts.filter((slot) =>
      slotCorners(slot).some(([cx, cy]) => cx < x || cy < y || cx > x + width || cy > y + height),
    );
    const over = texts.flatMap((a, i) =>
      texts
        .slice(i + 1)
        .filter((b) => overlap(shrunk(a), shrunk(b)))
        .map((b) => `sheet ${sheet + 1}: "${a.text}" over "${b.text}"`),
    );
    return [...outside.map(({ text }) => `sheet ${sheet + 1}: "${text}" outside`), ...over];
  });
}

function shrunk<T extends { width: number; height: number }>(slot: T): T {
  return { ...slot, width: slot.width - 2 * TOUCH, height: slot.height - 2 * TOUCH };
}
