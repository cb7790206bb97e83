import { roomAt } from '../../../geometry/check/room.ts';
import type { LevelModel } from '../../../geometry/level/types.ts';
import type { Detector, XY } from '../../../geometry/plan/model.ts';
import { ringsContain } from '../../../geometry/plane/ring.ts';
import type { Line } from '../../../geometry/plane/types.ts';
import { edgeToward, isInside } from './block.ts';
import { type LabelMedium, toUnits, unitsOf } from './medium.ts';
import { type Ground, LEADER_OVER, lineSlot, type Placer, type Slot } from './placer.ts';

/** Where a detector's tag stands. */
export interface TagPlace {
  readonly slot: Slot;
  /** Which of the widths found room. */
  readonly form: number;
  /** Which way from the symbol, so that the text begins or ends at it: -1 left, 0 above or below, 1 right. */
  readonly side: -1 | 0 | 1;
  /** From the symbol's rim to the tag, where another symbol is nearer or the tag stands off; null where it is plainly its own. */
  readonly leader: Line | null;
  /** Whether it lies over walls or outlines, which a filled ground must hide. */
  readonly plate: boolean;
}

/** From the rim to the tag without a leader, and to those with one, in sizes of its type. */
const NEAR = 0.5;
const FAR = [1.5, 3, 5, 8, 12, 18, 27, 40, 60, 90] as const;
/** Height of a tag, in the same. */
const HEIGHT = 1.15;

export function symbolRadius({ radius }: Detector, medium: LabelMedium): number {
  return Math.max(medium.symbol, unitsOf(medium, radius));
}

/**
 * Places for the tags of all detectors, taken before any other name: nearest to its own symbol, or with a leader to it. Every detector has
 * one where there is free ground anywhere in the medium's area.
 * @param widthsOf of each form of a tag, the fullest first
 */
export function placeTags(
  model: LevelModel,
  widthsOf: (detector: Detector) => readonly number[],
  medium: LabelMedium,
  placer: Placer,
): ReadonlyMap<string, TagPlace> {
  const { detectors } = model.level;
  for (const detector of detectors) {
    const [x, y] = toUnits(medium, detector.at);
    const side = 2 * symbolRadius(detector, medium) + 0.3 * medium.type.tag;
    placer.take({ x, y, width: side, height: side, turn: 0 }, 'symbol', detector.id);
  }
  return new Map(
    detectors.flatMap((detector) => {
      const place = tagPlace(model, detector, widthsOf(detector), medium, placer);
      return place ? [[detector.id, place] as const] : [];
    }),
  );
}

function tagPlace(
  model: LevelModel,
  detector: Detector,
  widths: readonly number[],
  medium: LabelMedium,
  placer: Placer,
): TagPlace | null {
  const at = toUnits(medium, detector.at);
  const radius = symbolRadius(detector, medium);
  const size = medium.type.tag;
  const others = model.level.detectors.filter((other) => other !== detector).map((other) => toUnits(medium, other.at));
  const room = roomAt(model, detector.at);
  const atHome = ([x, y]: XY) => room !== null && ringsContain(room.floorRings, [x / medium.scale, y / medium.scale]);
  for (const { away, over, home, forms } of manners(room !== null, widths)) {
    for (const form of forms) {
      const width = widths[form] ?? 0;
      for (const { x, y, side } of about(at, radius + away * size, width, HEIGHT * size, away > NEAR)) {
        const slot: Slot = { x, y, width, height: HEIGHT * size, turn: 0 };
        if (!placer.isFree(slot, over) || (home && !isInside(atHome, slot))) continue;
        const needsLeader = away > NEAR || others.some((other) => gapTo(slot, other) < 1.5 * gapTo(slot, at));
        const leader = needsLeader ? leaderFrom(at, radius, slot) : null;
        const line = leader && lineSlot(...leader, 0.1 * size);
        const leaderOver: readonly Ground[] = over === LEADER_OVER ? [...LEADER_OVER, 'symbol'] : LEADER_OVER;
        if (line && !placer.isFree(line, leaderOver, detector.id)) continue;
        placer.take(slot);
        if (line) placer.take(line, 'ink', detector.id);
        return { slot, form, side, leader, plate: over !== CLEAR };
      }
    }
  }
  return null;
}

interface Manner {
  readonly away: number;
  readonly over: readonly Ground[];
  readonly home: boolean;
  readonly forms: readonly number[];
}

/** On its own floor, near and then farther, with the full form first; on a plate over what is drawn there; then anywhere. */
function* manners(hasRoom: boolean, widths: readonly number[]): Generator<Manner> {
  const [first, ...others] = widths.map((_, form) => form);
  const short = [others.at(-1) ?? first ?? 0];
  if (hasRoom) {
    for (const away of [NEAR, 1.5]) yield { away, over: CLEAR, home: true, forms: [first ?? 0] };
    // Rather over the lines of a stream of air than without the verdict's word.
    if (others.length > 0) yield { away: NEAR, over: AIR, home: true, forms: [first ?? 0] };
    for (const away of [NEAR, 1.5, 3]) yield { away, over: CLEAR, home: true, forms: short };
    for (const away of [NEAR, 1.5]) yield { away, over: LEADER_OVER, home: true, forms: short };
  }
  for (const away of [NEAR, ...FAR.slice(0, 4)]) yield { away, over: CLEAR, home: false, forms: short };
  for (const away of [NEAR, ...FAR]) yield { away, over: LEADER_OVER, home: false, forms: short };
}

/** What a tag may lie over, and on a plate. */
const CLEAR: readonly Ground[] = ['edge', 'thing'];
const AIR: readonly Ground[] = [...CLEAR, 'line'];

/** Middles about a point: beside, above and below, at the corners; farther off in sixteen directions. */
function about(
  [x, y]: XY,
  off: number,
  width: number,
  height: number,
  all: boolean,
): readonly { readonly x: number; readonly y: number; readonly side: -1 | 0 | 1 }[] {
  const [across, down] = [off + width / 2, off + height / 2];
  const near = [
    { x: x + across, y, side: 1 },
    { x: x - across, y, side: -1 },
    { x, y: y - down, side: 0 },
    { x, y: y + down, side: 0 },
    { x: x + width / 2, y: y - down, side: 1 },
    { x: x + width / 2, y: y + down, side: 1 },
    { x: x - width / 2, y: y - down, side: -1 },
    { x: x - width / 2, y: y + down, side: -1 },
  ] as const;
  if (!all) return near;
  return Array.from({ length: 16 }, (_, i) => {
    const angle = -Math.PI / 4 + (i % 2 === 0 ? 1 : -1) * Math.ceil(i / 2) * (Math.PI / 8);
    const side = Math.abs(Math.cos(angle)) < 0.3 ? 0 : Math.sign(Math.cos(angle));
    return { x: x + Math.cos(angle) * across, y: y + Math.sin(angle) * down, side: side as -1 | 0 | 1 };
  });
}

/** From an upright slot to a point; 0 within. */
function gapTo({ x, y, width, height }: Slot, [px, py]: XY): number {
  return Math.hypot(Math.max(0, Math.abs(px - x) - width / 2), Math.max(0, Math.abs(py - y) - height / 2));
}

/** From the rim to the edge of the tag; null where they touch. */
function leaderFrom(at: XY, radius: number, slot: Slot): Line | null {
  const end = edgeToward(slot, at);
  const length = Math.hypot(end[0] - at[0], end[1] - at[1]);
  if (length <= radius) return null;
  const share = radius / length;
  return [[at[0] + (end[0] - at[0]) * share, at[1] + (end[1] - at[1]) * share], end];
}
