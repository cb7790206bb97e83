/** The faces of the pages' font, as the style sheet inside an SVG names them. */

export interface FontFace {
  readonly subset: 'latin' | 'latin-ext';
  readonly weight: 400 | 700;
}

/** Letters of the extended font files: Latin Extended-A and -B, and Latin Extended Additional (Unicode blocks). */
const EXTENDED = /[\u0100-\u024f\u1e00-\u1eff]/;
const EXTENDED_RANGE = 'U+0100-024F, U+1E00-1EFF';

/** A run of letters that one font file has. */
export interface SubsetRun {
  readonly text: string;
  readonly subset: FontFace['subset'];
}

/** Returns the text in runs of one subset each, in order; joined they are the text. */
export function runsBySubset(text: string): readonly SubsetRun[] {
  return text
    .split(new RegExp(`(${EXTENDED.source}+)`))
    .filter(Boolean)
    .map((run) => ({ text: run, subset: EXTENDED.test(run) ? 'latin-ext' : 'latin' }));
}

/** Returns the faces that the text of an SVG needs. */
export function facesOf(svg: string): readonly FontFace[] {
  const subsets = EXTENDED.test(svg) ? (['latin', 'latin-ext'] as const) : (['latin'] as const);
  return subsets.flatMap((subset) => ([400, 700] as const).map((weight) => ({ subset, weight })));
}

/** Returns the SVG with a style sheet of these faces. `data`: data URLs of WOFF 2 files. */
export function withFaces(svg: string, faces: readonly { readonly face: FontFace; readonly data: string }[]): string {
  const rules = faces.map(({ face: { subset, weight }, data }) => {
    const characters = subset === 'latin-ext' ? `unicode-range:${EXTENDED_RANGE};` : '';
    return `@font-face{font-family:'Atkinson Hyperlegible Next';font-weight:${weight};${characters}src:url(${data}) format('woff2')}`;
  });
  return svg.replace(/>/, `><style>${rules.join('')}</style>`);
}
