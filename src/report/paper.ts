import { EDGE_MM } from './style.ts';

export type PaperName = 'letter' | 'a4';

/** A rectangle on the paper, mm. */
export interface Area {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** Landscape, mm: ANSI letter (8 1/2 × 11 in) and ISO 216 A4. */
export const PAPERS: Readonly<Record<PaperName, { readonly width: number; readonly height: number }>> = {
  letter: { width: 279.4, height: 215.9 },
  a4: { width: 297, height: 210 },
};

/** What the frame encloses. */
export function frameOf(paper: PaperName): Area {
  const { width, height } = PAPERS[paper];
  return { x: EDGE_MM, y: EDGE_MM, width: width - 2 * EDGE_MM, height: height - 2 * EDGE_MM };
}

/** The area without a margin on each side. */
export function inset({ x, y, width, height }: Area, by: number): Area {
  return { x: x + by, y: y + by, width: width - 2 * by, height: height - 2 * by };
}
