import type { Room } from '../../../geometry/level/types.ts';
import type { Fixture, PlanObject, XY } from '../../../geometry/plan/model.ts';
import { ringExtent } from '../../../geometry/plane/body.ts';
import { memoize } from '../../../geometry/plane/memoize.ts';
import { nearestOnRing, ringsContain } from '../../../geometry/plane/ring.ts';
import { discsPart, linesPart, type Shape } from '../display-list.ts';
import { shortened, type TextStyle } from '../text.ts';
import { type Block, blockForms, blockSlot, blockTexts, coreOf, edgeToward, isInside, type Size } from './block.ts';
import { outlineOf, thingSlot } from './grounds.ts';
import { type Label, type LabelMedium, toUnits } from './medium.ts';
import { type Ground, LEADER_OVER, lineSlot, type Placer, type Slot } from './placer.ts';
import { gridPlaces } from './rooms.ts';

/** Free ground between an outline and its name, in sizes of the type; from the second on with a leader. */
const AWAY = [0.15, 1.2, 2.8] as const;
type Away = (typeof AWAY)[number];
/** Halos break the edges of zones. */
const EDGES: readonly Ground[] = ['edge'];
/** A longer name is shortened, in sizes of its type. */
const LONGEST = 19;
/** A name that is farther from its outline than this needs a leader. */
const CLOSE = 0.6;

/**
 * A thing's name within its outline, beside it, or farther off with a leader, always on the floor that the thing stands on; null where there is no room.
 * @param names from the fullest to the shortest: the first that finds room is written
 */
export function thingLabel(
  thing: Fixture | PlanObject,
  names: readonly string[],
  rooms: readonly Room[],
  medium: LabelMedium,
  placer: Placer,
): Label | null {
  const color = 'kind' in thing ? 'ink' : 'inkSoft';
  const style: TextStyle = { size: medium.type.fine, color, halo: 'paper' };
  const ring = outlineOf(thing).map((p) => toUnits(medium, p));
  const own = thingSlot(thing, medium);
  let floor: ReturnType<typeof floorOf> | null = null;
  // Worked out when a place is free: in a crowded house most things find none.
  const onFloor = (p: XY) => {
    floor ??= floorOf(own, rooms, medium);
    return floor(p);
  };
  const formsOf = names.map((name) => {
    const fitting = shortened(name, LONGEST * style.size, (text) => medium.measure(text, style));
    return blockForms(fitting, style, medium.measure);
  });
  const sidesAt = freeSides(own, coreOf(formsOf.flat()), medium, placer);
  for (const forms of formsOf) {
    const label =
      within(thing.id, own, ring, forms, medium, placer) ?? beside(own, ring, forms, sidesAt, onFloor, medium, placer);
    if (label) return label;
  }
  return null;
}

/** Whether a point lies on the floor that the slot's middle lies on; where it lies on none, whether the point does neither. */
function floorOf({ x, y }: Slot, rooms: readonly Room[], { scale }: LabelMedium): (p: XY) => boolean {
  const at = ([px, py]: XY): XY => [px / scale, py / scale];
  const own = rooms.find((room) => isOnFloor(room, at([x, y])));
  if (own) return (p) => isOnFloor(own, at(p));
  return (p) => !rooms.some((room) => isOnFloor(room, at(p)));
}

const floorExtent = memoize(({ floorRings }: Room) => ringExtent(floorRings.flat()));

function isOnFloor(room: Room, [x, y]: XY): boolean {
  const { minX, minY, maxX, maxY } = floorExtent(room);
  return x >= minX && x <= maxX && y >= minY && y <= maxY && ringsContain(room.floorRings, [x, y]);
}

function within(
  id: string,
  own: Slot,
  ring: readonly XY[],
  forms: readonly Block[],
  { type }: LabelMedium,
  placer: Placer,
): Label | null {
  const holds = (p: XY) => ringsContain([ring], p);
  const fitting = forms.filter(({ width }) => width <= Math.hypot(own.width, own.height));
  if (fitting.length === 0) return null;
  // A square, so that it lies in every form however it is turned.
  const side = Math.min(...Object.values(coreOf(fitting)));
  const core = { width: side, height: side };
  const places = gridPlaces([ring], [own.x, own.y], type.fine).filter((at) =>
    placer.isFree(blockSlot(core, at), EDGES, id),
  );
  for (const turn of [0, -90]) {
    for (const form of fitting) {
      for (const at of places) {
        const slot = blockSlot(form, at, turn);
        if (isInside(holds, slot) && placer.isFree(slot, EDGES, id)) return written(form, slot, [], placer);
      }
    }
  }
  return null;
}

/** Close by, then farther. */
function beside(
  own: Slot,
  ring: readonly XY[],
  forms: readonly Block[],
  sidesAt: (away: Away) => readonly XY[],
  onFloor: (p: XY) => boolean,
  medium: LabelMedium,
  placer: Placer,
): Label | null {
  for (const away of AWAY) {
    for (const form of forms.slice(0, 2)) {
      for (const side of sidesAt(away)) {
        const slot = blockSlot(form, besideAt(own, form, away * medium.type.fine, side));
        if (!placer.isFree(slot, EDGES) || !isInside(onFloor, slot)) continue;
        const leader = leaderTo(ring, slot, medium);
        if (leader && !placer.isFree(leader.slot, LEADER_OVER)) continue;
        if (leader) placer.take(leader.slot, 'line');
        return written(form, slot, leader?.shapes ?? [], placer);
      }
    }
  }
  return null;
}

function written(form: Block, slot: Slot, shapes: readonly Shape[], placer: Placer): Label {
  placer.take(slot);
  return { texts: blockTexts(form, [slot.x, slot.y], slot.turn), shapes, slots: [slot] };
}

const DIRECTIONS: readonly XY[] = [
  [0, 1],
  [1, 0],
  [-1, 0],
  [0, -1],
  [1, -0.5],
  [1, 0.5],
  [-1, -0.5],
  [-1, 0.5],
  [0.5, -1],
  [0.5, 1],
  [-0.5, -1],
  [-0.5, 1],
  [1, 1],
  [1, -1],
  [-1, 1],
  [-1, -1],
];

/** Returns the directions in which the core of all forms is free at a distance: every form there covers it. */
function freeSides(own: Slot, core: Size, { type }: LabelMedium, placer: Placer): (away: Away) => readonly XY[] {
  const known = new Map<Away, readonly XY[]>();
  return (away) => {
    const sides =
      known.get(away) ??
      DIRECTIONS.filter((side) => placer.isFree(blockSlot(core, besideAt(own, core, away * type.fine, side)), EDGES));
    known.set(away, sides);
    return sides;
  };
}

/** The middle of a block that lies `away` from the outline in a direction. */
function besideAt(own: Slot, { width, height }: Size, away: number, [i, j]: XY): XY {
  const angle = (own.turn * Math.PI) / 180;
  const [cos, sin] = [Math.abs(Math.cos(angle)), Math.abs(Math.sin(angle))];
  const reachX = (own.width * cos + own.height * sin + width) / 2 + away;
  const reachY = (own.width * sin + own.height * cos + height) / 2 + away;
  return [own.x + i * reachX, own.y + j * reachY];
}

/** A thin line from the name to its thing, with a dot where it ends; null where the name is close by. */
function leaderTo(
  ring: readonly XY[],
  label: Slot,
  { type }: LabelMedium,
): { readonly shapes: readonly Shape[]; readonly slot: Slot } | null {
  const end = nearestOnRing([label.x, label.y], ring);
  const start = edgeToward(label, end);
  const length = Math.hypot(end[0] - start[0], end[1] - start[1]);
  if (length < CLOSE * type.fine) return null;
  return {
    shapes: [
      { ink: { line: 'leader', color: 'inkSoft' }, parts: [linesPart([[start, end]])] },
      { ink: { fill: 'inkSoft' }, parts: [discsPart([end], type.fine * 0.15)] },
    ],
    slot: lineSlot(start, end, type.fine * 0.1),
  };
}
