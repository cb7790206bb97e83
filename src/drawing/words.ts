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

/** The words on the plan, the same on screen and on paper. */

/**
 * Returns the name of a zone: "Sump pit 7 ft", "Window 3 ft"; for a zone to stay out of, its kind alone. A required distance is never
 * rounded down.
 */
export function zoneName({ rule, subject, distance, keepOut }: Zone, plan: Plan, level: Level): string {
  const isSun = rule === 'direct-sun';
  if (keepOut) return isSun ? ruleOf(plan.protocol, rule).name : 'Airflow';
  const opening = level.openings.find(({ id }) => id === subject);
  const name = opening && !isSun ? capital(opening.kind) : ruleOf(plan.protocol, rule).name;
  return `${name} ${formatRequired(distance, plan.display.length)}`;
}

/** Returns the names of a thing, the fullest first: its own, then its kind. */
export function thingNames(thing: Thing): readonly string[] {
  const own = thing.name.trim();
  return [own, 'kind' in thing ? capital(FIXTURE_NOUN[thing.kind]) : ''].filter(Boolean);
}

/** The texts of a room's label: its name, area and sizes, and why no detector may be placed in it (empty if one may). */
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

/**
 * Returns the sides of a rectangular room: "20 ft 9 3/4 in × 24 ft"; for any other room its extent along and across its longest edge, with
 * "at most".
 */
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

/** Direction of the longest edge, turned by quarter turns to within 45 degrees of the page's x axis. */
function longestEdge(ring: readonly XY[]): readonly [cos: number, sin: number] {
  let best = { length: 0, dx: 1, dy: 0 };
  ring.forEach(([x, y], i) => {
    const [nx, ny] = ring[(i + 1) % ring.length] as XY;
    const length = Math.hypot(nx - x, ny - y);
    // Of edges of almost the same length the first counts: else a rounding error could change the words.
    if (length > best.length + 1) best = { length, dx: nx - x, dy: ny - y };
  });
  const angle = Math.atan2(best.dy, best.dx);
  const near = angle - Math.round(angle / (Math.PI / 2)) * (Math.PI / 2);
  return [Math.cos(near), Math.sin(near)];
}

/**
 * Returns the figure on a measured line: the measured distance, with the limit unless the check is clear. Rounded toward caution, as in the
 * tables: down against a minimum, up against a maximum. Only a stream of air has a negative distance: the detector is in it.
 */
export function measureWords(check: Check, plan: Plan): string {
  const into = -(check.measured ?? 0);
  if (into > 0) return `${formatLength(into, plan.display.length, 'up')} into the airflow`;
  return check.verdict === 'clear' ? checkFigures(check, plan).measured : figureWithLimit(check, plan);
}
