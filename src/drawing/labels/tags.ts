import { roomAt } from '../../../geometry/check/room.ts';
import { floorContains } from '../../../geometry/level/floor-contains.ts';
import type { LevelModel } from '../../../geometry/level/types.ts';
import type { Detector, XY } from '../../../geometry/plan/model.ts';
import { along, distance } from '../../../geometry/plane/point.ts';
import type { Line } from '../../../geometry/plane/types.ts';
import { polar } from '../display-list.ts';
import type { LabelMedium, LabelSheet } from './label.ts';
import { DRAWN, type Ground } from './placer.ts';
import { edgeToward, isInside, lineSlot, pairs, type Size, type Slot, slotAt } from './slot.ts';

/** The place of a detector's tag. Plan mm. */
export interface TagPlace {
  /** Place of the detector. */
  readonly at: XY;
  readonly slot: Slot;
  /** Index of the width that fits. */
  readonly form: number;
  /** Side of the symbol, for the alignment of the text: -1 left, 0 above or below, 1 right. */
  readonly side: number;
  /** From the symbol's rim to the tag, if the tag is not close to its symbol or another symbol is about as near; else null. */
  readonly leader: Line | null;
  /** Whether it covers walls, outlines or lines, which a filled plate must hide. */
  readonly plate: boolean;
}

/** Distance from the rim to a tag without a leader, and to tags with one, as multiples of the type size. */
const NEAR = 0.5;
const FAR = [1.5, 3, 5, 8, 12, 18, 27, 40, 60, 90] as const;
/** Height of a tag, as a multiple of the type size. */
const HEIGHT = 1.15;
/** Ground that a tag may cover without a plate; `AIR` adds lines, such as those of a stream of air, which need a plate. */
const CLEAR: readonly Ground[] = ['thing'];
const AIR: readonly Ground[] = [...CLEAR, 'line'];
/** Ground that a leader may cross, and that a tag may cover as a last resort: the tags of marks are placed later. */
const MARKED: readonly Ground[] = [...DRAWN, 'mark'];

export function symbolRadius({ radius }: Detector, { symbol }: LabelMedium): number {
  return Math.max(symbol, radius);
}

/**
 * Returns the places of all detectors' tags by detector id, and takes their ground: near the detector's own symbol, or with a leader to it.
 * To be called before any name is placed. A detector is missing if every place that is tried is taken.
 * @param widthsOf widths of the forms of a tag, the fullest first
 */
export function placeTags(
  model: LevelModel,
  widthsOf: (detector: Detector) => readonly number[],
  sheet: LabelSheet,
): ReadonlyMap<string, TagPlace> {
  const { detectors } = model.level;
  for (const detector of detectors) {
    const side = 2 * symbolRadius(detector, sheet) + 0.3 * sheet.type.tag;
    sheet.placer.take(slotAt({ width: side, height: side }, detector.at), 'symbol', detector.id);
  }
  return new Map(
    detectors.flatMap((detector) => {
      const place = tagPlace(model, detector, widthsOf(detector), sheet);
      return place ? [[detector.id, place] as const] : [];
    }),
  );
}

function tagPlace(
  model: LevelModel,
  detector: Detector,
  widths: readonly number[],
  sheet: LabelSheet,
): TagPlace | null {
  const { placer, type } = sheet;
  const { at, id } = detector;
  const radius = symbolRadius(detector, sheet);
  const room = roomAt(model, at);
  const atHome = (p: XY) => room !== null && floorContains(room, p);
  const isNearer = (slot: Slot, other: Detector) => other !== detector && gapTo(slot, other.at) < 1.5 * gapTo(slot, at);
  for (const { away, over, home, form } of manners(room !== null, widths)) {
    const size = { width: widths[form] ?? 0, height: HEIGHT * type.tag };
    const [across, down] = [size.width, size.height].map((side) => radius + away * type.tag + side / 2) as [
      number,
      number,
    ];
    for (const [dx, dy] of away > NEAR ? farAbout(across, down) : nearAbout(across, down, size)) {
      const slot = slotAt(size, [at[0] + dx, at[1] + dy]);
      if (!placer.isFree(slot, over) || (home && !isInside(atHome, slot))) continue;
      const needsLeader = away > NEAR || model.level.detectors.some((other) => isNearer(slot, other));
      const leader = needsLeader ? leaderFrom(at, radius, slot) : null;
      const line = leader && lineSlot(...leader, 0.1 * type.tag);
      if (line && !placer.isFree(line, over === DRAWN ? [...MARKED, 'symbol'] : MARKED, id)) continue;
      placer.take(slot);
      if (line) placer.take(line, 'ink', id);
      const side = Math.abs(dx) < 0.2 * across ? 0 : Math.sign(dx);
      return { at, slot, form, side, leader, plate: over !== CLEAR };
    }
  }
  return null;
}

interface Manner {
  readonly away: number;
  readonly over: readonly Ground[];
  readonly home: boolean;
  readonly form: number;
}

/** In the order tried: on the floor of the detector's room, the full form first, near and then farther; there on a plate; then anywhere. */
function manners(hasRoom: boolean, { length }: readonly number[]): readonly Manner[] {
  const last = Math.max(0, length - 1);
  const some = (aways: readonly number[], over: readonly Ground[], home: boolean, form = last) =>
    aways.map((away): Manner => ({ away, over, home, form }));
  const atHome = [
    ...some([NEAR, 1.5], CLEAR, true, 0),
    // The full form over the lines of a stream of air is better than a form without the word of the verdict.
    ...some(length > 1 ? [NEAR] : [], AIR, true, 0),
    ...some([NEAR, 1.5, 3], CLEAR, true),
    ...some([NEAR, 1.5], DRAWN, true),
  ];
  const anywhere = [
    ...some([NEAR, ...FAR.slice(0, 4)], CLEAR, false),
    ...some([NEAR, ...FAR], DRAWN, false),
    ...some([NEAR, ...FAR], MARKED, false),
  ];
  return [...(hasRoom ? atHome : []), ...anywhere];
}

/** Beside, above and below, then at the corners. */
function nearAbout(across: number, down: number, { width }: Size): readonly XY[] {
  return [...pairs([across, -across], [0]), ...pairs([0, width / 2, -width / 2], [-down, down])];
}

/** In sixteen directions, from the upper right to both sides in turn. */
function farAbout(across: number, down: number): readonly XY[] {
  return Array.from({ length: 16 }, (_, i): XY => {
    const [x, y] = polar([0, 0], 1, -Math.PI / 4 + (i % 2 === 0 ? 1 : -1) * Math.ceil(i / 2) * (Math.PI / 8));
    return [x * across, y * down];
  });
}

/** Distance from an upright slot to a point; 0 within. */
function gapTo({ x, y, width, height }: Slot, [px, py]: XY): number {
  return Math.hypot(Math.max(0, Math.abs(px - x) - width / 2), Math.max(0, Math.abs(py - y) - height / 2));
}

/** From the rim to the edge of the tag; null where they touch. */
function leaderFrom(at: XY, radius: number, slot: Slot): Line | null {
  const end = edgeToward(slot, at);
  const length = distance(at, end);
  return length <= radius ? null : [along(at, end, radius / length), end];
}
