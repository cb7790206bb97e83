/** Sizes, weights and colors of the sheet, in mm of paper. Colors are the theme that is always printed. */
import { SHEET_TAKEN_GROUND, SHEET_THEME } from '../theme/tokens.ts';

export const COLOR = SHEET_THEME;

export const TAKEN_GROUND = SHEET_TAKEN_GROUND;

/** Type sizes, mm: the least is 6 pt, which is read on paper at arm's length. */
export const TYPE_MM = { fine: 2.15, small: 2.35, body: 2.6, lead: 3, head: 3.6, title: 4.6 } as const;

/** At scales smaller than this one line weights shrink with the drawing. */
export const FULL_WEIGHT_RATIO = 100;

/** Beyond this scale the drawing is small: furniture is drawn lighter and rooms are named in small type. */
export const SMALL_RATIO = 150;

/** How far lines of dimensions stand off the outer face of a wall, and inside off a face, and from each other, mm. */
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

/** Free paper between the edge and the frame: what common printers leave white. */
export const EDGE_MM = 8;

/** px at 96 to the inch, in which the hatches are given, to mm. */
export const PX_MM = 25.4 / 96;
