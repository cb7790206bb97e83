import type { Ink, LineRole } from './display-list.ts';

/** Widths of lines, px on screen and mm on paper: walls heaviest and filled, hatches finest. */
export const LINE_WIDTHS: Readonly<Record<LineRole, { readonly px: number; readonly mm: number }>> = {
  wall: { px: 0.75, mm: 0.1 },
  below: { px: 1.5, mm: 0.15 },
  opening: { px: 1.25, mm: 0.25 },
  leaf: { px: 1.8, mm: 0.4 },
  fixture: { px: 1.5, mm: 0.25 },
  chosen: { px: 2.4, mm: 0.4 },
  sign: { px: 0.9, mm: 0.18 },
  object: { px: 0.9, mm: 0.18 },
  zone: { px: 1, mm: 0.15 },
  region: { px: 1.5, mm: 0.55 },
  dimension: { px: 0.8, mm: 0.15 },
  extension: { px: 0.5, mm: 0.1 },
  measured: { px: 1.6, mm: 0.3 },
  leader: { px: 1, mm: 0.2 },
  tag: { px: 1, mm: 0.3 },
};

type Dash = Exclude<Ink['dash'], undefined | readonly number[]>;

/** Dashes and gaps, in the same units. */
export const DASHES: Readonly<Record<Dash, { readonly px: readonly number[]; readonly mm: readonly number[] }>> = {
  overhead: { px: [5, 4], mm: [0.9, 0.6] },
  passage: { px: [4, 4], mm: [1, 0.8] },
  below: { px: [3, 4], mm: [0.6, 0.8] },
};
