import { EDGE_MM } from './style.ts';

export type PaperName = 'letter' | 'a4' | 'tabloid' | 'a3';

export type Orientation = 'landscape' | 'portrait';
export const ORIENTATIONS: readonly Orientation[] = ['landscape', 'portrait'];

/** A rectangle on the paper, mm. */
export interface Area {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** Size of a page as it is drawn, mm. */
export interface PageSize {
  readonly width: number;
  readonly height: number;
}

/** The paper and its orientation. Left out, the orientation that draws the plan larger; landscape for a page without a drawing. */
export interface PageChoice {
  readonly paper: PaperName;
  readonly orientation?: Orientation | undefined;
}

export interface Paper extends PageSize {
  /** Name for people. */
  readonly words: string;
}

/** Landscape, mm: ANSI/ASME Y14.1 letter (8 1/2 × 11 in) and tabloid (11 × 17 in), ISO 216 A4 and A3. */
export const PAPERS: Readonly<Record<PaperName, Paper>> = {
  letter: { width: 279.4, height: 215.9, words: 'Letter' },
  a4: { width: 297, height: 210, words: 'A4' },
  tabloid: { width: 431.8, height: 279.4, words: 'Tabloid' },
  a3: { width: 420, height: 297, words: 'A3' },
};

export const PAPER_NAMES = Object.keys(PAPERS) as readonly PaperName[];

export function pageSize(paper: PaperName, orientation: Orientation): PageSize {
  const { width, height } = PAPERS[paper];
  return orientation === 'landscape' ? { width, height } : { width: height, height: width };
}

/** Returns the size of a drawn page, mm, from its view box; 0 by 0 if it has none. */
export function sizeOfPage(svg: string): PageSize {
  const [, width = 0, height = 0] = (/ viewBox="0 0 ([\d.]+) ([\d.]+)"/.exec(svg) ?? []).map(Number);
  return { width, height };
}

export function isPortrait({ width, height }: PageSize): boolean {
  return width < height;
}

/** Returns the area that the frame encloses. */
export function frameOf({ width, height }: PageSize): Area {
  return { x: EDGE_MM, y: EDGE_MM, width: width - 2 * EDGE_MM, height: height - 2 * EDGE_MM };
}

/** Returns the area less a margin of `by` mm on each side. */
export function inset({ x, y, width, height }: Area, by: number): Area {
  return { x: x + by, y: y + by, width: width - 2 * by, height: height - 2 * by };
}
