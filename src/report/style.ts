/** Sizes and line weights of the sheet, mm of paper, and its colors, which do not depend on the theme of the screen. */
import { SHEET_TAKEN_GROUND, SHEET_THEME } from '../theme/tokens.ts';

export const COLOR = SHEET_THEME;

export const TAKEN_GROUND = SHEET_TAKEN_GROUND;

/** Type sizes, mm: the least is 6 pt, legible on paper at arm's length. */
export const TYPE_MM = { fine: 2.15, small: 2.35, body: 2.6, lead: 3, head: 3.6, title: 4.6 } as const;

/** At scales smaller than 1 to this ratio, the edge of the allowed area has a finer line. */
export const FULL_WEIGHT_RATIO = 100;

/** At scales smaller than 1 to this ratio, furniture has finer lines, room names have small type, and openings have no dimension strings. */
export const SMALL_RATIO = 150;

/** Distances of dimension lines from the outer face of a wall, from the inner face, and from each other, mm. */
export const DIMENSIONS_MM = { outside: 6, inside: 3, step: 5.5 } as const;

/** Line weights, mm: walls heaviest and filled, hatches finest. */
export const LINE_MM = {
  frame: 0.5,
  region: 0.55,
  wall: 0.3,
  box: 0.3,
  detector: 0.4,
  fixture: 0.25,
  measured: 0.3,
  object: 0.18,
  rule: 0.15,
  dimension: 0.15,
  zone: 0.15,
} as const;

/** Distance from the edge of the paper to the frame, mm: common printers leave it white. */
export const EDGE_MM = 8;

/** mm per px at 96 px per inch, the unit of the hatches. */
export const PX_MM = 25.4 / 96;
