import { EDGE_MM } from './style.ts';

export type PaperName = 'letter' | 'a4' | 'tabloid' | 'a3';

/** A rectangle on the paper, mm. */
export interface Area {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

export interface Paper {
  readonly width: number;
  readonly height: number;
  /** As people call it. */
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

/** What the frame encloses. */
export function frameOf(paper: PaperName): Area {
  const { width, height } = PAPERS[paper];
  return { x: EDGE_MM, y: EDGE_MM, width: width - 2 * EDGE_MM, height: height - 2 * EDGE_MM };
}

/** The area without a margin on each side. */
export function inset({ x, y, width, height }: Area, by: number): Area {
  return { x: x + by, y: y + by, width: width - 2 * by, height: height - 2 * by };
}
