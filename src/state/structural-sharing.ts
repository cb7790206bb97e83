import type { ArcRing } from '../../geometry/arrangement/types.ts';
import type { LevelModel, OpeningBody, Room, WallJoint, WallPiece } from '../../geometry/level/types.ts';
import type { Ring } from '../../geometry/plane/types.ts';
import type { LevelRegion, RoomRegion, Zone } from '../../geometry/region/types.ts';

/**
 * Structural sharing: an edit of one wall rebuilds every room and every zone of the level, though most are equal to those before. These
 * functions return the old objects where they are equal in value, so that everything memoized by object stays valid.
 */
export function shareModelParts(before: LevelModel | null, model: LevelModel): LevelModel {
  if (!before || before.level.id !== model.level.id || before.rooms === model.rooms) return model;
  return {
    ...model,
    rooms: sharedBy(before.rooms, model.rooms, ({ key }) => key, sameRoom),
    pieces: sharedBy(before.pieces, model.pieces, ({ wall }) => wall.id, samePiece),
    joints: sharedBy(before.joints, model.joints, jointKey, sameJoint),
    openings: sharedBy(before.openings, model.openings, ({ opening }) => opening.id, sameOpening),
  };
}

/** The same for a region. `region` must be of a model from `shareModelParts`. */
export function shareZones(before: LevelRegion | null, region: LevelRegion): LevelRegion {
  if (!before) return region;
  return {
    ...region,
    rooms: sharedBy(before.rooms, region.rooms, ({ room }) => room.key, sameRoomRegion),
    zones: sharedBy(before.zones, region.zones, zoneKey, sameZone),
  };
}

const jointKey = ({ walls }: WallJoint) => walls.map(({ id }) => id).join(' ');

const zoneKey = ({ rule, subject }: Zone) => `${rule}/${subject}`;

/** Returns for each new object the old one of its key that is equal, else the new one. Several of one key are compared in their order. */
function sharedBy<T>(
  before: readonly T[],
  now: readonly T[],
  keyOf: (one: T) => string,
  same: (a: T, b: T) => boolean,
): readonly T[] {
  const known = new Map<string, T[]>();
  for (const one of before) {
    const key = keyOf(one);
    const others = known.get(key);
    if (others) others.push(one);
    else known.set(key, [one]);
  }
  return now.map((one) => {
    const olds = known.get(keyOf(one));
    const index = olds?.findIndex((old) => old === one || same(old, one)) ?? -1;
    return olds && index >= 0 ? (olds.splice(index, 1)[0] as T) : one;
  });
}

function sameRoom(a: Room, b: Room): boolean {
  return (
    a.label === b.label &&
    sameItems(a.labels, b.labels) &&
    samePoint(a.labelPoint, b.labelPoint) &&
    sameRings(a.floorRings, b.floorRings) &&
    sameRings(a.centerRings, b.centerRings)
  );
}

function samePiece(a: WallPiece, b: WallPiece): boolean {
  return a.wall === b.wall && a.outside === b.outside && sameRing(a.body, b.body) && sameEnds(a, b);
}

function sameJoint(a: WallJoint, b: WallJoint): boolean {
  return sameItems(a.walls, b.walls) && a.outside === b.outside && sameRing(a.body, b.body) && samePoint(a.at, b.at);
}

function sameEnds(a: WallPiece, b: WallPiece): boolean {
  return a.thickness === b.thickness && samePoint(a.from, b.from) && samePoint(a.to, b.to);
}

function sameOpening(a: OpeningBody, b: OpeningBody): boolean {
  return a.opening === b.opening && a.outside === b.outside && sameRing(a.body, b.body);
}

function sameRoomRegion(a: RoomRegion, b: RoomRegion): boolean {
  return (
    a.room === b.room &&
    a.area === b.area &&
    a.barred === b.barred &&
    a.barredBy === b.barredBy &&
    a.decided === b.decided &&
    sameOutlines(a.rings, b.rings)
  );
}

function sameZone(a: Zone, b: Zone): boolean {
  return (
    a.rule === b.rule &&
    a.subject === b.subject &&
    a.distance === b.distance &&
    a.keepOut === b.keepOut &&
    sameOutlines(a.outlines, b.outlines)
  );
}

function sameOutlines(a: readonly ArcRing[], b: readonly ArcRing[]): boolean {
  return a === b || (a.length === b.length && a.every((ring, i) => sameOutline(ring, b[i] as ArcRing)));
}

function sameOutline(a: ArcRing, b: ArcRing): boolean {
  if (a === b) return true;
  if (a.length !== b.length) return false;
  return a.every((edge, i) => {
    const other = b[i];
    if (edge.kind === 'line')
      return other?.kind === 'line' && samePoint(edge.from, other.from) && samePoint(edge.to, other.to);
    return (
      other?.kind === 'arc' &&
      samePoint(edge.center, other.center) &&
      edge.radius === other.radius &&
      edge.start === other.start &&
      edge.sweep === other.sweep
    );
  });
}

function sameRings(a: readonly Ring[], b: readonly Ring[]): boolean {
  return a === b || (a.length === b.length && a.every((ring, i) => sameRing(ring, b[i] as Ring)));
}

function sameRing(a: Ring, b: Ring): boolean {
  return a === b || (a.length === b.length && a.every((point, i) => samePoint(point, b[i] as Ring[number])));
}

function samePoint(a: readonly [number, number], b: readonly [number, number]): boolean {
  return a[0] === b[0] && a[1] === b[1];
}

function sameItems<T>(a: readonly T[], b: readonly T[]): boolean {
  return a.length === b.length && a.every((item, i) => item === b[i]);
}
