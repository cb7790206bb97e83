import type { Deg, Level, Site, Wall, XY } from '../plan/model.ts';
import { FIXTURE_NOUN, lowerFirst } from '../plan/nouns.ts';
import { direction } from '../plane/bearing.ts';
import { along, distance } from '../plane/point.ts';

const POINTS = ['north', 'north-east', 'east', 'south-east', 'south', 'south-west', 'west', 'north-west'] as const;

/** The direction of true north, or that it is not answered. */
export type North = Pick<Site, 'north' | 'northAnswered'>;

/**
 * Returns the compass point of a direction on the page. While true north is not answered, plan north (straight up the page) is used: "plan east".
 *
 * @param direction degrees clockwise on screen from +x
 */
export function compassPoint(direction: Deg, { north, northAnswered }: North): string {
  const bearing = direction + 90 - north;
  const eighth = ((Math.round(bearing / 45) % 8) + 8) % 8;
  return `${northAnswered === false ? 'plan ' : ''}${POINTS[eighth] ?? 'north'}`;
}

/** Where the subject is, seen from the detector: distinguishes two doors. */
export interface Bearing {
  readonly from: XY;
  readonly to: XY;
  readonly north: North;
}

/**
 * Returns an item of the level as a noun phrase: "the sump pit", "the window to the east", "the west outside wall",
 * "the desk".
 * A name given by the user is kept. If several unnamed items share a noun and `bearing` is given, the
 * compass point distinguishes them. An id that is not on the level is returned in quotes.
 */
export function subjectName(level: Level, id: string, bearing: Bearing | null = null, outside = true): string {
  const fixture = level.fixtures.find((one) => one.id === id);
  if (fixture) {
    if (fixture.name.trim()) return withArticle(fixture.name.trim());
    const alone = level.fixtures.filter(({ kind }) => kind === fixture.kind).length === 1;
    return `the ${FIXTURE_NOUN[fixture.kind]}${alone ? '' : toThe(bearing)}`;
  }
  const opening = level.openings.find((one) => one.id === id);
  if (opening) {
    const alone = level.openings.filter(({ kind }) => kind === opening.kind).length === 1;
    return `the ${opening.kind}${alone ? '' : toThe(bearing)}`;
  }
  if (level.walls.some((one) => one.id === id)) {
    const point = pointOf(bearing);
    return ['the', point, outside ? 'exterior wall' : 'interior wall'].filter(Boolean).join(' ');
  }
  const object = level.objects.find((one) => one.id === id);
  if (object) return object.name.trim() ? withArticle(object.name.trim()) : `an object${toThe(bearing)}`;
  const detector = level.detectors.find((one) => one.id === id);
  if (detector) return detector.label.trim() ? `detector ${detector.label.trim()}` : 'the other detector';
  const room = level.rooms.find((one) => one.id === id);
  if (room) return room.name.trim() || 'the room';
  return `"${id}"`;
}

/**
 * "Desk" → "the desk"; names that are not one plain capitalized word or phrase ("TV stand", "Mum's chair", "B2") stay
 * as typed.
 */
export function withArticle(name: string): string {
  return /^[A-Z][a-z]+(?: [a-z]+)*$/.test(name) ? `the ${lowerFirst(name)}` : name;
}

/** Returns the middle of an opening on its wall; null for an id that is none. */
export function openingMiddle(level: Level, id: string): XY | null {
  const opening = level.openings.find((one) => one.id === id);
  const wall = opening && level.walls.find((one) => one.id === opening.wall);
  if (!wall) return null;
  return along(wall.from, wall.to, (opening.offset + opening.width / 2) / (distance(wall.from, wall.to) || 1));
}

function pointOf(bearing: Bearing | null): string {
  if (!bearing) return '';
  const { from, to, north } = bearing;
  return distance(from, to) === 0 ? '' : compassPoint(direction(from, to), north);
}

function toThe(bearing: Bearing | null): string {
  const point = pointOf(bearing);
  return point ? ` to the ${point}` : '';
}

type EndName = 'left' | 'right' | 'upper' | 'lower';

/**
 * Returns the names of the two ends of a wall as seen on the page: left and right, or upper and lower for a steep wall.
 */
export function wallEndNames({ from, to }: Pick<Wall, 'from' | 'to'>): Readonly<Record<'from' | 'to', EndName>> {
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]];
  if (Math.abs(dx) >= Math.abs(dy)) return dx >= 0 ? { from: 'left', to: 'right' } : { from: 'right', to: 'left' };
  return dy >= 0 ? { from: 'upper', to: 'lower' } : { from: 'lower', to: 'upper' };
}
