import type { Check } from '../../geometry/check/types.ts';
import type { Room } from '../../geometry/level/types.ts';
import { capital, checkFigures, FIXTURE_NOUN, figureWithLimit, ROOM_USE_NOUN } from '../../geometry/messages/index.ts';
import type { Level, Plan, XY } from '../../geometry/plan/model.ts';
import { ringExtent } from '../../geometry/plane/extent.ts';
import { signedArea } from '../../geometry/plane/ring.ts';
import type { RoomRegion, Zone } from '../../geometry/region/types.ts';
import { ruleOf } from '../../geometry/rules/profiles.ts';
import {
  formatArea,
  formatLength,
  formatMeasured,
  formatRequired,
  type LengthUnit,
} from '../../geometry/units/index.ts';
import type { Thing } from './things.ts';

/** The words that stand on the plan, the same on screen and on paper. */

/** "Sump pit 7 ft", "Window 3 ft"; of what is to stay out of, what it is. A required distance is never said smaller than it is. */
export function zoneName({ rule, subject, distance, keepOut }: Zone, plan: Plan, level: Level): string {
  const isSun = rule === 'direct-sun';
  if (keepOut) return isSun ? ruleOf(plan.protocol, rule).name : 'Airflow';
  const opening = level.openings.find(({ id }) => id === subject);
  const name = opening && !isSun ? capital(opening.kind) : ruleOf(plan.protocol, rule).name;
  return `${name} ${formatRequired(distance, plan.display.length)}`;
}

/** The names of a thing, the fullest first: its own, then what it is. */
export function thingNames(thing: Thing): readonly string[] {
  const own = thing.name.trim();
  return [own, 'kind' in thing ? capital(FIXTURE_NOUN[thing.kind]) : ''].filter(Boolean);
}

/** What a room's label says: its name, floor, sizes, and why it holds no detector where it may not; else empty. */
export interface RoomWords {
  readonly title: string;
  readonly area: string;
  readonly size: string;
  readonly barred: string;
}

export function roomTitle({ label }: Room): string {
  return label?.name.trim() || (label ? capital(ROOM_USE_NOUN[label.use]) : 'Room without a name');
}

export function roomWords({ room, barred }: RoomRegion, { display }: Plan): RoomWords {
  const { label, floorArea } = room;
  return {
    title: roomTitle(room),
    area: formatArea(floorArea, display.length),
    size: roomSizeWords(room, display.length),
    barred: label ? barred : 'What is it used for?',
  };
}

/** "20 ft 9 3/4 in × 24 ft": sides of a four-cornered room; of any other, how far it reaches, with "at most". */
export function roomSizeWords({ floorRings }: Room, unit: LengthUnit): string {
  const ring = floorRings[0] ?? [];
  const [cos, sin] = longestEdge(ring);
  const turned = floorRings.flat().map(([x, y]): XY => [x * cos + y * sin, y * cos - x * sin]);
  const { minX, minY, maxX, maxY } = ringExtent(turned);
  const words = [maxX - minX, maxY - minY].map((size) => formatMeasured(size, unit)).join(' × ');
  const box = (maxX - minX) * (maxY - minY);
  const full = floorRings.length === 1 && Math.abs(Math.abs(signedArea(ring)) - box) <= 1e-6 * box;
  return full ? words : `${words} at most`;
}

/** Direction of the longest edge, within half a quarter turn of the page's x. */
function longestEdge(ring: readonly XY[]): readonly [cos: number, sin: number] {
  let best = { length: 0, dx: 1, dy: 0 };
  ring.forEach(([x, y], i) => {
    const [nx, ny] = ring[(i + 1) % ring.length] as XY;
    const length = Math.hypot(nx - x, ny - y);
    // Of edges of almost the same length the first counts: else rounding would turn the words.
    if (length > best.length + 1) best = { length, dx: nx - x, dy: ny - y };
  });
  const angle = Math.atan2(best.dy, best.dx);
  const near = angle - Math.round(angle / (Math.PI / 2)) * (Math.PI / 2);
  return [Math.cos(near), Math.sin(near)];
}

/**
 * The figure on a measured line: what was measured, and what is needed where it is short. Toward caution, as in the tables: a least
 * distance is rounded down, a greatest one up. Only a stream is reached into.
 */
export function measureWords(check: Check, plan: Plan): string {
  const into = -(check.measured ?? 0);
  if (into > 0) return `${formatLength(into, plan.display.length, 'up')} into the airflow`;
  return check.verdict === 'clear' ? checkFigures(check, plan).measured : figureWithLimit(check, plan);
}
