/**
 * Design tokens: every color, size, weight and duration on screen and in print. The canvas reads these objects; style sheets read the custom
 * properties that `token-styles.ts` makes of them.
 *
 * The verdict tones are Okabe and Ito's bluish green, sky blue (clear of what is drawn), orange, vermilion and reddish purple (2008, a set
 * that people with color-vision deficiency can distinguish), darkened or put under dark text until every text passes 4.5:1; the accent is
 * their blue. `tests/src/theme/contrast.test.ts` computes the contrasts.
 */

import type { Tone } from '../../geometry/messages/tone.ts';

/** Colors of one verdict: a fill, the text on it, and the tone for text or lines on paper. */
interface VerdictTone {
  readonly ground: string;
  readonly on: string;
  readonly line: string;
}

export interface Theme {
  readonly name: string;
  /** Around the drawing area. */
  readonly desk: string;
  /** The drawing area: also the color of floor where a detector may be placed. */
  readonly paper: string;
  /** Panels. */
  readonly card: string;
  /** Fields, pressed rows, tracks of bars: one step darker or lighter than the panel. */
  readonly well: string;
  readonly ink: string;
  /** Secondary text; passes 4.5:1 on card, paper, well and desk. */
  readonly inkSoft: string;
  /** Hairlines that separate rows and panels. */
  readonly rule: string;
  /** Edges of fields and buttons; passes 3:1 on card and paper. */
  readonly edge: string;
  readonly accent: string;
  readonly onAccent: string;
  /** Walls, filled. */
  readonly poche: string;
  /** Fixtures, objects, openings: medium line. */
  readonly fixture: string;
  readonly fixtureFill: string;
  /** Dimensions and measured lines. */
  readonly dimension: string;
  /** Hatch of excluded floor, and its edge. */
  readonly hatch: string;
  readonly hatchEdge: string;
  readonly grid: string;
  /** Walls of the level below, and their edge. */
  readonly below: string;
  readonly belowEdge: string;
  readonly verdict: Readonly<Record<Tone, VerdictTone>>;
  /** Multiplies every line weight. */
  readonly weight: number;
  /** CSS filter of a photo under the drawing: a bright one would dazzle in the dark theme. */
  readonly photo: 'positive' | 'negative';
}

const paper: Theme = {
  name: 'Paper',
  desk: '#d3dbd9',
  paper: '#ffffff',
  card: '#f5f7f5',
  well: '#e6ebe8',
  ink: '#16212b',
  inkSoft: '#48555e',
  rule: '#c3ccc9',
  edge: '#6d7a82',
  accent: '#005c90',
  onAccent: '#ffffff',
  poche: '#2a353e',
  fixture: '#2f3c46',
  fixtureFill: '#ffffff',
  dimension: '#005c90',
  hatch: '#7c878d',
  hatchEdge: '#59656d',
  grid: '#e3e9e6',
  below: '#eef2f0',
  belowEdge: '#9aa5aa',
  verdict: {
    clear: { ground: '#006f51', on: '#ffffff', line: '#006f51' },
    'clear-of-drawn': { ground: '#a9daf5', on: '#16212b', line: '#1a6689' },
    tight: { ground: '#e69f00', on: '#16212b', line: '#7d5600' },
    blocked: { ground: '#ad4000', on: '#ffffff', line: '#a53d00' },
    unknown: { ground: '#83496a', on: '#ffffff', line: '#83496a' },
  },
  weight: 1,
  photo: 'positive',
};

const sun: Theme = {
  name: 'Bright sun',
  desk: '#ffffff',
  paper: '#ffffff',
  card: '#ffffff',
  well: '#ececec',
  ink: '#000000',
  inkSoft: '#1f1f1f',
  rule: '#4d4d4d',
  edge: '#000000',
  accent: '#003d63',
  onAccent: '#ffffff',
  poche: '#000000',
  fixture: '#000000',
  fixtureFill: '#ffffff',
  dimension: '#003d63',
  hatch: '#3a3a3a',
  hatchEdge: '#000000',
  grid: '#d9d9d9',
  below: '#ededed',
  belowEdge: '#6b6b6b',
  verdict: {
    clear: { ground: '#00533c', on: '#ffffff', line: '#00533c' },
    'clear-of-drawn': { ground: '#a9daf5', on: '#000000', line: '#0c4a68' },
    tight: { ground: '#ffb000', on: '#000000', line: '#614300' },
    blocked: { ground: '#7a3000', on: '#ffffff', line: '#7a3000' },
    unknown: { ground: '#5c3049', on: '#ffffff', line: '#5c3049' },
  },
  weight: 1.6,
  photo: 'positive',
};

const dark: Theme = {
  name: 'Dark',
  desk: '#0e1418',
  paper: '#182128',
  card: '#141c22',
  well: '#25313a',
  ink: '#eef3f2',
  inkSoft: '#b3c0c4',
  rule: '#35434c',
  edge: '#83939c',
  accent: '#7cc4f0',
  onAccent: '#0e1418',
  poche: '#c9d4d6',
  fixture: '#d6e0e1',
  fixtureFill: '#182128',
  dimension: '#7cc4f0',
  hatch: '#6f8089',
  hatchEdge: '#8e9ea6',
  grid: '#212c34',
  below: '#202b33',
  belowEdge: '#5f707a',
  verdict: {
    clear: { ground: '#3cc79f', on: '#0e1418', line: '#3cc79f' },
    'clear-of-drawn': { ground: '#1f4a61', on: '#eef3f2', line: '#8fd0f5' },
    tight: { ground: '#f0b429', on: '#0e1418', line: '#f0b429' },
    blocked: { ground: '#ff8a47', on: '#0e1418', line: '#ff8a47' },
    unknown: { ground: '#dd9cc0', on: '#0e1418', line: '#dd9cc0' },
  },
  weight: 1,
  photo: 'negative',
};

export const THEMES = { paper, sun, dark } as const satisfies Record<string, Theme>;
export type ThemeName = keyof typeof THEMES;
/** Theme of print and export, independent of the theme on screen. */
export const SHEET_THEME: Theme = paper;

/** Light fill of excluded floor in print: beside sparse hatches only allowed floor stays white. */
export const SHEET_TAKEN_GROUND = '#f1f3f2';

/** Shadows: the page behind a dialog, the edge of the drawing area. The same in all themes. */
export const SHADE = { backdrop: 'rgb(0 0 0 / 35%)', paper: 'rgb(0 0 0 / 0.22)' } as const;

/** Space in px, steps of 4. */
export const SPACE_PX = { 1: 4, 2: 8, 3: 12, 4: 16, 5: 20, 6: 24, 8: 32, 12: 48 } as const;

/** Distance of a line of dimensions from the wall's outer face, and inside a room from the inner face, px. */
export const DIMENSION_PX = { outside: 20, inside: 13 } as const;
/** The six type sizes, px. `read` is the minimum for text that must be read on site. */
export const TYPE_PX = { fine: 13, small: 14, read: 16, lead: 19, head: 24, verdict: 38 } as const;

/** px. */
export const RADIUS_PX = { field: 3, card: 6 } as const;

/** Line weights on the drawing in screen px at theme weight 1: walls heaviest, hatches finest. */
export const LINE_PX = {
  wall: 1.5,
  fixture: 1.5,
  detector: 2,
  zoneEdge: 1,
  dimension: 1,
  hatch: 0.75,
  below: 1,
  focus: 3,
} as const;

/** Duration of transitions, ms; 0 where the system asks for reduced motion. */
export const MOTION_MS = 150;

/** Minimum size of a pointer target, px: WCAG 2.2 SC 2.5.8, and for a coarse pointer that of a fingertip. */
export const TARGET_PX = { fine: 24, coarse: 44 } as const;
