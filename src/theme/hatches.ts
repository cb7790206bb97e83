/**
 * One hatch for each family of rules, on screen and in print. They differ in direction, spacing and mark, so that they are distinguishable in
 * gray and with color-vision deficiency. Data only: a repeating cell with its marks as SVG path data, for a canvas (`Path2D`) and for SVG
 * patterns.
 */
import type { RoomRegion } from '../../geometry/region/types.ts';
import type { RuleId } from '../../geometry/rules/types.ts';

/** Lengths are px at 96 per inch; print scales them. */
export interface Hatch {
  /** Size of the repeating cell. */
  readonly width: number;
  readonly height: number;
  /** Rotation of the pattern, degrees clockwise. */
  readonly turn: number;
  /** Path of the stroked marks; empty for none. They continue across cell edges without a seam. */
  readonly stroke: string;
  /** Path of the filled marks; empty for none. */
  readonly fill: string;
  /** Line width. */
  readonly weight: number;
}

/** Returns a hatch of one line along the middle of each cell. */
const lines = (spacing: number, turn: number, weight = 0.75): Hatch => ({
  width: 16,
  height: spacing,
  turn,
  stroke: `M0 ${spacing / 2}H16`,
  fill: '',
  weight,
});

/** Returns the path of a circle. */
const dot = (x: number, y: number, r: number): string =>
  `M${x - r} ${y}a${r} ${r} 0 1 0 ${2 * r} 0a${r} ${r} 0 1 0 ${-2 * r} 0z`;

/** Reasons why floor is excluded. `barred`: a room that must not hold a detector; `unlabelled`: a room without a label. */
export type HatchName =
  | Exclude<RuleId, 'level' | 'height-band' | 'ceiling' | 'support' | 'companion' | 'room-use'>
  | 'barred'
  | 'unlabelled'
  | 'height'
  | 'sunlit';

export const HATCHES: Readonly<Record<HatchName, Hatch>> = {
  // Rising to the right, wide.
  'outside-opening': lines(9, -45),
  // Falling to the right, narrow.
  'outside-wall': lines(6, 45),
  // Waves, like air.
  'moving-air': {
    width: 16,
    height: 10,
    turn: 0,
    stroke: 'M0 5C2.9 1.5 5.1 1.5 8 5S13.1 8.5 16 5',
    fill: '',
    weight: 0.75,
  },
  // Sharp peaks, like flames.
  heat: { width: 10, height: 10, turn: 0, stroke: 'M-1 8.6L0 7.5L5 2.5L10 7.5L11 8.6', fill: '', weight: 0.75 },
  // Open rings, like suns.
  'direct-sun': { width: 12, height: 12, turn: 0, stroke: dot(6, 6, 2.2), fill: '', weight: 0.75 },
  // The same rings with rays, drawn over the rings: the floor that the sun crosses.
  sunlit: {
    width: 12,
    height: 12,
    turn: 0,
    stroke: `${dot(6, 6, 2.2)}M6 1V3M6 9V11M1 6H3M9 6H11`,
    fill: '',
    weight: 0.75,
  },
  // Level lines in pairs, like water.
  sump: { width: 16, height: 12, turn: 0, stroke: 'M0 4H16M0 7H16', fill: '', weight: 0.75 },
  // Drops.
  'floor-drain': {
    width: 10,
    height: 10,
    turn: 0,
    stroke: '',
    fill: dot(2.5, 2.5, 0.95) + dot(7.5, 7.5, 0.95),
    weight: 0,
  },
  // Falling to the right, in pairs.
  'inside-wall': { width: 12, height: 12, turn: 45, stroke: 'M0 4H12M0 7H12', fill: '', weight: 0.6 },
  // Broken waves: excluded only while the machine runs.
  'running-machine': { width: 16, height: 10, turn: 0, stroke: 'M2 5C4 2.5 6 2.5 8 5', fill: '', weight: 0.75 },
  // Rings and drops, like suds.
  'washer-dryer': { width: 14, height: 14, turn: 0, stroke: dot(4, 4, 2), fill: dot(11, 11, 1), weight: 0.6 },
  // Short upright strokes, staggered.
  object: { width: 8, height: 10, turn: 0, stroke: 'M2 1V5M6 6V10', fill: '', weight: 0.75 },
  // A net: the whole room is excluded.
  barred: { width: 11, height: 11, turn: 45, stroke: 'M0 5.5H11M5.5 0V11', fill: '', weight: 0.6 },
  // A net of broken lines: not yet known.
  unlabelled: { width: 14, height: 14, turn: 45, stroke: 'M3 7H11M7 3V11', fill: '', weight: 0.6 },
  // Upright lines, wide: no spot at this height.
  height: lines(12, 90),
};

/** Returns the hatch of the floor that a rule excludes; null for a rule that excludes none. */
export function ruleHatch(rule: RuleId): HatchName | null {
  switch (rule) {
    case 'room-use':
    case 'level':
      return 'barred';
    case 'height-band':
    case 'ceiling':
      return 'height';
    case 'support':
    case 'companion':
      return null;
    default:
      return rule;
  }
}

/** Returns the hatch of a room that is excluded as a whole; null if a detector may be placed in it. */
export function roomHatch({ barredBy, decided }: Pick<RoomRegion, 'barredBy' | 'decided'>): HatchName | null {
  if (!barredBy) return null;
  return decided ? ruleHatch(barredBy) : 'unlabelled';
}
