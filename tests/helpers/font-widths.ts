/** Makes the text of src/report/font-widths.ts from the font files. A test fails while that file is stale. */
import { advanceWidths, type FontWeight, fontFile } from './woff.ts';

export const WIDTHS_FILE = 'src/report/font-widths.ts';

type Runs = readonly (readonly [first: number, widths: readonly number[]])[];

/** Returns runs of consecutive code points. If both subsets have a character, the width of the Latin one is used. */
function widthRuns(weight: FontWeight): Runs {
  const merged = new Map([
    ...advanceWidths(fontFile('latin-ext', weight)),
    ...advanceWidths(fontFile('latin', weight)),
  ]);
  const runs: [number, number[]][] = [];
  for (const [code, width] of [...merged].sort(([a], [b]) => a - b)) {
    const last = runs.at(-1);
    if (last && last[0] + last[1].length === code) last[1].push(width);
    else runs.push([code, [width]]);
  }
  return runs;
}

export function widthsFileText(): string {
  const table = (weight: FontWeight) =>
    widthRuns(weight).map(([first, list]) => `    [${first}, [${list.join(', ')}]],`);
  return [
    '/** Advance widths of the sheet font. Made by `node tests/run/font-widths.mjs`; do not edit. */',
    '',
    '/** A run of code points with their advance widths, in thousandths of the type size. */',
    'export type WidthRun = readonly [first: number, widths: readonly number[]];',
    '',
    '// biome-ignore format: one run a line',
    "export const FONT_WIDTHS: Readonly<Record<'regular' | 'bold', readonly WidthRun[]>> = {",
    '  regular: [',
    ...table(400),
    '  ],',
    '  bold: [',
    ...table(700),
    '  ],',
    '};',
    '',
  ].join('\n');
}
