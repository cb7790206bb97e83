import type { LevelModel } from '../level/types.ts';
import type { Deg, Mm, Plan, XY } from '../plan/model.ts';
import { direction } from '../plane/bearing.ts';
import { type Body, ringBody, shapeBody } from '../plane/body.ts';
import type { NearestSpot } from '../region/types.ts';
import { formatLength } from '../units/index.ts';
import { compassPoint, type North, subjectName, withArticle } from './subject.ts';

/**
 * Returns the way to a position in words: "1 ft 10 in toward the east wall". If the position is in another room, that room
 * is named: "12 ft 4 in, into the den". The length is rounded up, so that a move does not end short.
 *
 * @param room id of the label of the room that the detector is in now; null for none
 */
export function describeWay(
  spot: NearestSpot,
  from: XY,
  room: string | null,
  plan: Pick<Plan, 'display' | 'site'>,
  model: LevelModel,
): string {
  const far = formatLength(spot.distance, plan.display.length, 'up');
  const label = spot.room.label;
  if (label && label.id !== room) return `${far}, into ${roomName(label.name)}`;
  return `${far} ${towardName(model, from, spot.direction, spot.distance, plan.site)}`;
}

/**
 * Returns what is ahead: "toward the desk", "toward the east wall", or "to the east" if nothing is.
 *
 * @param beyond mm along the ray; nearer items are ignored
 */
export function towardName(model: LevelModel, from: XY, direction: Deg, beyond: Mm, north: North): string {
  const ahead: XY = [Math.cos((direction * Math.PI) / 180), Math.sin((direction * Math.PI) / 180)];
  let least = Number.POSITIVE_INFINITY;
  let name = `to the ${compassPoint(direction, north)}`;
  const offer = (body: Body, words: () => string) => {
    const hit = firstHit(body, from, ahead, beyond);
    if (hit < least) {
      least = hit;
      name = `toward ${words()}`;
    }
  };
  const { level } = model;
  for (const { opening, body } of model.openings) {
    offer(ringBody(body), () => subjectName(level, opening.id, { from, to: oneAhead(from, ahead), north }));
  }
  for (const { id, shape } of [...level.fixtures, ...level.objects]) {
    offer(shapeBody(shape), () => subjectName(level, id, { from, to: oneAhead(from, ahead), north }));
  }
  // Walls come after the openings, so that a door or window is named in preference to its wall.
  for (const { body, from: a, to: b } of model.pieces) {
    offer(ringBody(body), () => `the ${compassPoint(acrossWall(a, b, ahead), north)} wall`);
  }
  return name;
}

/** Returns the normal of a wall on the far side; degrees clockwise on screen from +x. */
function acrossWall(a: XY, b: XY, ahead: XY): Deg {
  const normal: XY = [a[1] - b[1], b[0] - a[0]];
  const sign = normal[0] * ahead[0] + normal[1] * ahead[1] < 0 ? -1 : 1;
  return direction([0, 0], [sign * normal[0], sign * normal[1]]);
}

/** Returns the distance along the ray to the first hit of the body at or after `beyond`; infinite for none. */
function firstHit(body: Body, from: XY, ahead: XY, beyond: Mm): Mm {
  const hits = body.kind === 'ring' ? ringHits(body.ring, from, ahead) : discHits(body, from, ahead);
  return hits.reduce((least, hit) => (hit >= beyond && hit < least ? hit : least), Number.POSITIVE_INFINITY);
}

function ringHits(ring: readonly XY[], from: XY, ahead: XY): readonly Mm[] {
  const hits: Mm[] = [];
  ring.forEach((b, index) => {
    const a = ring[(index + ring.length - 1) % ring.length] as XY;
    const dx = b[0] - a[0];
    const dy = b[1] - a[1];
    const slant = ahead[0] * dy - ahead[1] * dx;
    if (slant === 0) return; // parallel to the ray: the neighboring edges are hit
    const along = ((a[0] - from[0]) * dy - (a[1] - from[1]) * dx) / slant;
    const share = ((a[0] - from[0]) * ahead[1] - (a[1] - from[1]) * ahead[0]) / slant;
    if (share >= 0 && share <= 1) hits.push(along);
  });
  return hits;
}

/** Returns the hits of a disc (pits, drains, heaters); none for a sector, which is no landmark. */
function discHits(body: Exclude<Body, { kind: 'ring' }>, from: XY, ahead: XY): readonly Mm[] {
  if (body.kind !== 'disc') return [];
  const x = body.x - from[0];
  const y = body.y - from[1];
  const along = x * ahead[0] + y * ahead[1];
  const halfSq = body.radius ** 2 - (x * x + y * y - along * along);
  return halfSq < 0 ? [] : [along - Math.sqrt(halfSq), along + Math.sqrt(halfSq)];
}

function oneAhead(from: XY, ahead: XY): XY {
  return [from[0] + ahead[0], from[1] + ahead[1]];
}

function roomName(name: string): string {
  const trimmed = name.trim();
  return trimmed ? withArticle(trimmed) : 'the next room';
}
