import type { Tone } from '../../geometry/messages/tone.ts';
import type { HatchName } from '../theme/hatches.ts';
import type { Theme } from '../theme/tokens.ts';

/** Widths of lines by what they are for, px on screen and mm on paper: walls heaviest and filled, hatches finest. */
const LINE_WIDTHS = {
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
} as const;

/** Dashes and gaps, in the same units. */
const DASHES = {
  overhead: { px: [5, 4], mm: [0.9, 0.6] },
  passage: { px: [4, 4], mm: [1, 0.8] },
  below: { px: [3, 4], mm: [0.6, 0.8] },
} as const;

type ThemeColor = Exclude<keyof Theme, 'name' | 'verdict' | 'weight' | 'photo'>;

/** Roles that share a color of the theme. The sheet around the drawing has the color of the panels, and so does excluded floor. */
const COLOR_OF = { ground: 'card', sheet: 'card', object: 'edge', objectFill: 'well', fixtureFill: 'well' } as const;

/** A color by what it is for; a verdict's tone is the color of its lines. */
export type ColorRole = Tone | ThemeColor | keyof typeof COLOR_OF;

/** How a shape is drawn. A number as `line` or `dash` is in the units of the medium. */
export interface Ink {
  readonly fill?: ColorRole;
  /** The hatch lies over the fill. */
  readonly hatch?: HatchName;
  /** Fill rule of overlapping outlines; by default the non-zero rule. */
  readonly rule?: 'evenodd';
  readonly line?: keyof typeof LINE_WIDTHS | number;
  readonly color?: ColorRole;
  readonly dash?: keyof typeof DASHES | readonly number[] | undefined;
  readonly opacity?: number;
}

/** Returns the CSS color of a role in a theme. */
export function roleColor(theme: Theme, role: ColorRole): string {
  if (role in theme.verdict) return theme.verdict[role as Tone].line;
  return theme[role in COLOR_OF ? COLOR_OF[role as keyof typeof COLOR_OF] : (role as ThemeColor)];
}

/** Returns the width and dashes of an ink's line in the units of a medium; width 0 for no line. */
export function strokeOf({ line = 0, dash = [] }: Ink, unit: 'px' | 'mm') {
  const width: number = typeof line === 'number' ? line : LINE_WIDTHS[line][unit];
  const dashes: readonly number[] = typeof dash === 'string' ? DASHES[dash][unit] : dash;
  return { width, dashes };
}
