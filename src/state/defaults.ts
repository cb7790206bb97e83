/**
 * Sizes and heights that a thing gets when it is set down. All of them: usual size, common practice, no published source. Each is a
 * starting point to be measured on site. A height is marked as not measured, and no rule is met by it; the place and the size of a thing
 * are as drawn.
 */
import { type UnmeasuredHeights, unmeasuredHeights } from '../../geometry/edit/index.ts';
import type { FixtureKind, Mm, OpeningKind, Shape, XY } from '../../geometry/plan/model.ts';
import { inches } from '../../geometry/rules/figures.ts';

/** A round or square-cornered footprint, and where it begins and ends above the floor. */
export interface UsualSize {
  readonly footprint: { readonly across: Mm } | { readonly width: Mm; readonly depth: Mm };
  readonly bottom: Mm;
  /** Above the floor; `ceiling` for a thing that hangs from the ceiling or reaches it. */
  readonly top: Mm | 'ceiling';
  /** Set for a thing that hangs: `bottom` is then measured down from the ceiling. */
  readonly hangs?: true;
}

const round = (across: number, bottom: number, top: number | 'ceiling'): UsualSize => ({
  footprint: { across: inches(across) },
  bottom: inches(bottom),
  top: top === 'ceiling' ? top : inches(top),
});
const square = (width: number, depth: number, bottom: number, top: number | 'ceiling'): UsualSize => ({
  footprint: { width: inches(width), depth: inches(depth) },
  bottom: inches(bottom),
  top: top === 'ceiling' ? top : inches(top),
});

/** In inches: across, or width by depth; then from and to above the floor. */
export const FIXTURE_DEFAULTS: Readonly<Record<FixtureKind, UsualSize>> = {
  'supply-register': square(10, 4, 0, 0),
  'return-grille': square(14, 2, 3, 17),
  'exhaust-fan': { ...square(12, 12, 1, 'ceiling'), hangs: true },
  'ceiling-fan': { ...round(52, 12, 'ceiling'), hangs: true },
  'portable-fan': round(16, 0, 36),
  'window-air-conditioner': square(20, 18, 36, 50),
  'air-cleaner': square(16, 10, 0, 24),
  dehumidifier: square(15, 11, 0, 24),
  humidifier: round(12, 0, 20),
  furnace: square(24, 30, 0, 60),
  boiler: square(24, 30, 0, 48),
  'water-heater': round(22, 0, 60),
  fireplace: square(48, 24, 0, 48),
  'wood-stove': square(28, 24, 0, 32),
  radiator: square(36, 8, 0, 26),
  'space-heater': square(16, 8, 0, 20),
  'sump-pit': round(18, 0, 0),
  'floor-drain': round(6, 0, 0),
  washer: square(27, 30, 0, 38),
  dryer: square(27, 30, 0, 38),
  'mitigation-pipe': round(4.5, 0, 'ceiling'),
};

export const OBJECT_PRESETS = [
  'desk',
  'table',
  'bench',
  'shelf',
  'cabinet',
  'sofa',
  'bed',
  'boxes',
  'stairs',
  'post',
  'thing',
] as const;
export type ObjectPreset = (typeof OBJECT_PRESETS)[number];

export const OBJECT_DEFAULTS: Readonly<Record<ObjectPreset, UsualSize & { readonly name: string }>> = {
  desk: { name: 'Desk', ...square(48, 24, 0, 30) },
  table: { name: 'Table', ...square(60, 36, 0, 29) },
  bench: { name: 'Workbench', ...square(72, 24, 0, 36) },
  shelf: { name: 'Shelf', ...square(36, 12, 0, 72) },
  cabinet: { name: 'Cabinet', ...square(36, 20, 0, 36) },
  sofa: { name: 'Sofa', ...square(84, 36, 0, 34) },
  bed: { name: 'Bed', ...square(60, 80, 0, 24) },
  boxes: { name: 'Boxes', ...square(24, 24, 0, 36) },
  stairs: { name: 'Stairs', ...square(36, 120, 0, 'ceiling') },
  post: { name: 'Post', ...round(4, 0, 'ceiling') },
  thing: { name: 'Thing', ...square(24, 24, 0, 30) },
};

export const OPENING_DEFAULTS: Readonly<
  Record<OpeningKind, { readonly width: Mm; readonly bottom: Mm; readonly top: Mm }>
> = {
  door: { width: inches(32), bottom: 0, top: inches(80) },
  window: { width: inches(32), bottom: inches(52), top: inches(72) },
  passage: { width: inches(36), bottom: 0, top: inches(80) },
};

/** Thickness of a new wall: an outer basement wall of 8 in; a partition of 2 by 4 studs with board on both sides. */
export const WALL_THICKNESS = { outer: inches(8), partition: inches(4.5) } as const;

/** The footprint of a usual size about `center`, turned by `turn` degrees. */
export function usualShape(size: UsualSize, center: XY, turn = 0): Shape {
  if ('across' in size.footprint) return { circle: { center, radius: size.footprint.across / 2 } };
  return { box: { center, width: size.footprint.width, depth: size.footprint.depth, turn } };
}

interface Heights extends UnmeasuredHeights {
  readonly bottom: Mm;
  readonly top: Mm;
}

/** Returns bottom and top above the floor, mm, in a room with this ceiling, marked as not measured. */
export function usualHeights(size: UsualSize, ceiling: Mm): Heights {
  const top = size.top === 'ceiling' ? ceiling : Math.min(size.top, ceiling);
  const heights = { bottom: size.hangs ? Math.max(0, ceiling - size.bottom) : size.bottom, top };
  return { ...heights, ...unmeasuredHeights(heights) };
}
