import { floorContains } from '../../../geometry/level/floor-contains.ts';
import type { Room } from '../../../geometry/level/types.ts';
import type { XY } from '../../../geometry/plan/model.ts';
import { nearestOnRing, ringsContain } from '../../../geometry/plane/ring.ts';
import type { Ring } from '../../../geometry/plane/types.ts';
import { discsPart, inked, linesPart } from '../display-list.ts';
import { shortened, type TextStyle } from '../text.ts';
import type { Thing } from '../things.ts';
import { outlineOf, thingSlot } from './grounds.ts';
import {
  type Block,
  blockForms,
  type Label,
  type LabelSheet,
  type ThingLabel,
  writeBlock,
  writeFirst,
} from './label.ts';
import { DRAWN } from './placer.ts';
import { gridPlaces } from './rooms.ts';
import { edgeToward, isInside, lineSlot, pairs, type Size, type Slot, slotAt } from './slot.ts';

/** Distances between an outline and its name in the order tried, as multiples of the type size; from the second on with a leader. */
const AWAY = [0.15, 1.2, 2.8] as const;
/** A longer name is shortened, as a multiple of its type size. */
const LONGEST = 19;
/** A name that is farther from its outline than this needs a leader, as a multiple of the type size. */
const CLOSE = 0.6;

/**
 * Returns a thing's name within its outline, or beside it or farther off with a leader, on the floor of the same room; null if there is no
 * room.
 * @param names from the fullest to the shortest: the first that finds room is written
 */
export function thingLabel(
  thing: Thing,
  names: readonly string[],
  rooms: readonly Room[],
  sheet: LabelSheet,
): ThingLabel | null {
  const { measure, type } = sheet;
  const style: TextStyle = { size: type.fine, color: 'kind' in thing ? 'ink' : 'inkSoft', halo: 'paper' };
  for (const name of names) {
    const fitting = shortened(name, LONGEST * style.size, (text) => measure(text, style));
    const forms = blockForms(fitting, style, measure);
    const label = within(thing, forms, sheet) ?? beside(thing, forms, floorOf(thing, rooms), sheet);
    if (label) return { ...label, thing };
  }
  return null;
}

/** Whether a point is on the floor of the room that the thing is in; for a thing in no room, whether the point is in no room. */
function floorOf(thing: Thing, rooms: readonly Room[]): (p: XY) => boolean {
  const { x, y } = thingSlot(thing);
  const own = rooms.find((room) => floorContains(room, [x, y]));
  return (p) => (own ? floorContains(own, p) : !rooms.some((room) => floorContains(room, p)));
}

function within(thing: Thing, forms: readonly Block[], sheet: LabelSheet): Label | null {
  const { x, y, width, height } = thingSlot(thing);
  const rings = [outlineOf(thing)];
  const fitting = forms.filter((block) => block.width <= Math.hypot(width, height));
  const tries = [0, -90].flatMap((turn) => fitting.map((block) => ({ block, turn })));
  const terms = { owner: thing.id, holds: (p: XY) => ringsContain(rings, p) };
  return writeFirst(tries, () => gridPlaces(rings, [x, y], sheet.type.fine), terms, sheet);
}

/** Close by, then farther. */
function beside(thing: Thing, forms: readonly Block[], holds: (p: XY) => boolean, sheet: LabelSheet): Label | null {
  const { placer, type } = sheet;
  const own = thingSlot(thing);
  for (const away of AWAY) {
    for (const block of forms.slice(0, 2)) {
      for (const side of DIRECTIONS) {
        const slot = slotAt(block, besideAt(own, block, away * type.fine, side));
        if (!placer.isFree(slot) || !isInside(holds, slot)) continue;
        const leader = leaderTo(outlineOf(thing), slot, type.fine);
        if (!leader) return writeBlock(block, slot, sheet);
        if (!placer.isFree(leader.slot, DRAWN)) continue;
        placer.take(leader.slot, 'line');
        return writeBlock(block, slot, sheet, leader.shapes);
      }
    }
  }
  return null;
}

/** Below, beside and above, then between these, then at the corners. */
const DIRECTIONS: readonly XY[] = [
  [0, 1],
  [1, 0],
  [-1, 0],
  [0, -1],
  ...pairs([1, -1], [-0.5, 0.5]),
  ...pairs([0.5, -0.5], [-1, 1]),
  ...pairs([1, -1], [1, -1]),
];

/** The middle of a block that lies `away` from the outline in a direction. */
function besideAt({ x, y, width, height, turn }: Slot, block: Size, away: number, [i, j]: XY): XY {
  const [cos, sin] = [Math.abs(Math.cos((turn * Math.PI) / 180)), Math.abs(Math.sin((turn * Math.PI) / 180))];
  const reachX = (width * cos + height * sin + block.width) / 2 + away;
  const reachY = (width * sin + height * cos + block.height) / 2 + away;
  return [x + i * reachX, y + j * reachY];
}

/** A thin line from the name to its thing, with a dot where it ends; null where the name is close by. */
function leaderTo(outline: Ring, label: Slot, size: number) {
  const end = nearestOnRing([label.x, label.y], outline);
  const start = edgeToward(label, end);
  const slot = lineSlot(start, end, size * 0.1);
  if (slot.width < CLOSE * size) return null;
  const line = inked({ line: 'leader', color: 'inkSoft' }, linesPart([[start, end]]));
  return { slot, shapes: [line, inked({ fill: 'inkSoft' }, discsPart([end], size * 0.15))] };
}
