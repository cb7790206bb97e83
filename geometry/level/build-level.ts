import { Scratch } from '../arrangement/free-boundary.ts';
import { NearbyZones } from '../arrangement/nearby-zones.ts';
import type { Level, Opening, RoomLabel, Wall, XY } from '../plan/model.ts';
import { type Extent, ringExtent } from '../plane/extent.ts';
import { ringLabelPoint } from '../plane/label-point.ts';
import { memoize, memoizeRecent } from '../plane/memoize.ts';
import { comparePoints, distance } from '../plane/point.ts';
import { ringContains, ringsCover, signedArea } from '../plane/ring.ts';
import type { Ring } from '../plane/types.ts';
import { type Bodies, type EdgeBody, wallBodies } from './bodies.ts';
import { joinedCenterLines } from './center-lines.ts';
import { type Faces, traceFaces } from './faces.ts';
import { faceFloor, solidZones } from './floors.ts';
import { type EdgeWalls, type GraphEdge, type WallGraph, wallGraph } from './graph.ts';
import type { Joint } from './node-joints.ts';
import { gapNotices, highDegreeNotices, labelNotices, overlapNotices, passageNotices } from './notices.ts';
import { type HostWalls, hostWallsOf, openingBody } from './openings.ts';
import { cavityTest, edgesOutdoors, type FaceKind, SMALLEST_FLOOR } from './outdoors.ts';
import { NODE_TOLERANCE } from './tolerances.ts';
import type { LevelModel, Notice, OpeningBody, Room, WallJoint, WallPiece } from './types.ts';

/** Twice as many levels as a house has. Keeping a model of every step in the undo history would exhaust the memory. */
const MOST_MEMOIZED = 24;

/** The part of the model that depends on the walls alone, with functions for the rest that are memoized per list of walls. */
interface WallModel {
  readonly noticesOf: () => readonly Notice[];
  readonly roomsOf: (labels: readonly RoomLabel[]) => readonly Room[];
  readonly sidesOf: (labels: readonly RoomLabel[]) => Sides;
}

/** The part of the model that depends on which side of each wall is outdoors. */
interface Sides {
  readonly pieces: readonly WallPiece[];
  readonly joints: readonly WallJoint[];
  readonly openingsOf: (openings: readonly Opening[]) => readonly OpeningBody[];
}

/**
 * Returns the rooms, wall pieces, opening bodies and notices of a level. Never throws on a level that the reader accepts.
 * Memoized by identity for the most recently used levels; parts that an edit does not change are not rebuilt.
 */
export const buildLevel: (level: Level) => LevelModel = memoizeRecent((level: Level) => {
  const { noticesOf, roomsOf, sidesOf } = wallModel(level.walls);
  const rooms = roomsOf(level.rooms);
  const { pieces, joints, openingsOf } = sidesOf(level.rooms);
  const openings = openingsOf(level.openings);
  let notices: readonly Notice[] | null = null;
  return {
    level,
    rooms,
    pieces,
    joints,
    openings,
    // Lazy, because no distance and no region depends on them.
    get notices() {
      notices ??= [...noticesOf(), ...labelNotices(level, rooms), ...passageNotices(openings)];
      return notices;
    },
  };
}, MOST_MEMOIZED);

const wallModel = memoizeRecent((walls: readonly Wall[]): WallModel => {
  const { lines, notices } = joinedCenterLines(walls);
  const graph = wallGraph(lines);
  const faces = traceFaces(graph);
  const bodies = wallBodies(graph, faces);
  const floors = roomFloors(faces, bodies);
  const hosts = hostWallsOf(walls, graph);
  /** Keyed by which faces have a label: the outdoors depends on that and not on the names, so renaming a room rebuilds nothing. */
  const sides = new Map<string, Sides>();
  const isCavity = cavityTest(graph, faces);
  const narrow = lazyPerFace(floors, ({ face, labelPoint }) => isCavity(face, labelPoint));
  const roomsOf = memoize((labels: readonly RoomLabel[]) => floors.map((floor) => labelRoom(floor, labels)));
  let reported: readonly Notice[] | null = null;
  return {
    noticesOf: () => {
      reported ??= [
        ...notices,
        ...overlapNotices(graph),
        ...highDegreeNotices(graph, faces),
        ...gapNotices(graph, faces),
      ];
      return reported;
    },
    roomsOf,
    sidesOf: memoize((labels: readonly RoomLabel[]) => {
      const rooms = roomsOf(labels);
      const labeled = new Set(floors.filter((_, i) => rooms[i]?.label).map(({ face }) => face));
      const key = [...labeled].join(' ');
      const existing = sides.get(key);
      if (existing) return existing;
      const kinds = faces.faces.map((_, face): FaceKind => {
        const isNarrow = narrow.get(face);
        return { hasFloor: isNarrow !== undefined, hasLabel: labeled.has(face), isNarrow: isNarrow ?? (() => true) };
      });
      const made = sidesFrom(graph, bodies, hosts, edgesOutdoors(graph, faces, kinds));
      sides.set(key, made);
      return made;
    }),
  };
}, MOST_MEMOIZED);

/** Returns a lazy, memoized predicate for each face with a floor. */
function lazyPerFace(floors: readonly RoomFloor[], compute: (floor: RoomFloor) => boolean): Map<number, () => boolean> {
  return new Map(
    floors.map((floor) => {
      let result: boolean | null = null;
      return [
        floor.face,
        () => {
          result ??= compute(floor);
          return result;
        },
      ];
    }),
  );
}

function sidesFrom(graph: WallGraph, bodies: Bodies, hosts: HostWalls, isOutdoors: readonly boolean[]): Sides {
  const isOutside = graph.edges.map(({ walls }, k) => isOutsideWall(walls, isOutdoors[k] as boolean));
  const isShort = graph.edges.map(
    ({ from, to }) => distance(graph.nodes[from] as XY, graph.nodes[to] as XY) <= 2 * NODE_TOLERANCE,
  );
  // Walls that come within the node tolerance of each other on a short edge do not coincide: each is decided for
  // itself.
  const isPartOutside = ({ edge, walls }: EdgeWalls) =>
    isShort[edge] ? isOutsideWall(walls, isOutdoors[edge] as boolean) : (isOutside[edge] as boolean);
  const opening = memoize((one: Opening) => openingBody(one, hosts, graph, isOutside));
  return {
    pieces: bodies.edgeBodies.map((edgeBody) => wallPiece(graph, edgeBody, isPartOutside(edgeBody))),
    joints: bodies.joints.flatMap((joint) => wallJoint(graph, joint, isPartOutside)),
    openingsOf: memoize((openings: readonly Opening[]) => openings.map(opening)),
  };
}

/** Where coinciding walls disagree, the stricter reading (outside) counts. */
function isOutsideWall(walls: readonly Wall[], bordersOutdoors: boolean): boolean {
  return walls.some(({ side }) => side === 'outside' || (side === 'auto' && bordersOutdoors));
}

function wallPiece({ nodes, edges }: WallGraph, { edge, wall, ring }: EdgeBody, outside: boolean): WallPiece {
  const { from, to } = edges[edge] as GraphEdge;
  return {
    wall,
    from: nodes[from] as XY,
    to: nodes[to] as XY,
    thickness: wall.thickness,
    outside,
    body: ring,
  };
}

/**
 * Returns the joint if it extends beyond the walls that meet, or if the walls that contain it require less distance
 * than it does.
 */
function wallJoint({ nodes }: WallGraph, joint: Joint, isOutside: (part: EdgeWalls) => boolean): WallJoint[] {
  const { node, parts, walls, ring, isContained, containedBy } = joint;
  const outside = parts.filter(isOutside).length >= 2;
  if (outside ? containedBy.some(isOutside) : isContained) return [];
  return [{ walls, at: nodes[node] as XY, outside, body: ring }];
}

/** A room without its label. */
type RoomFloor = Omit<Room, 'key' | 'label' | 'labels'> & { readonly extent: Extent; readonly face: number };

function roomFloors({ faces, faceOf }: Faces, bodies: Bodies): RoomFloor[] {
  const solids = new NearbyZones(solidZones(bodies.solids));
  const own: Ring[][] = faces.map(() => []);
  for (const { edge, ring } of bodies.edgeBodies) {
    for (const h of [2 * edge, 2 * edge + 1]) own[faceOf[h] as number]?.push(ring);
  }
  const scratch = new Scratch();
  const floors: RoomFloor[] = [];
  faces.forEach((face, index) => {
    const { rings, area } = faceFloor(face, solids, scratch, own[index]);
    const [outer] = rings;
    const [centerRing] = face.rings;
    if (!outer || !centerRing || area < SMALLEST_FLOOR) return;
    const holes = rings.filter((ring) => signedArea(ring) < 0 && ringContains(outer, ring[0] as XY));
    const labelPoint = ringLabelPoint([outer, ...holes]);
    const extent = ringExtent(centerRing);
    floors.push({ centerRings: face.rings, floorRings: rings, floorArea: area, labelPoint, extent, face: index });
  });
  return floors.sort((a, b) => comparePoints(a.labelPoint, b.labelPoint));
}

function labelRoom(floor: RoomFloor, all: readonly RoomLabel[]): Room {
  const { extent, face: _, ...room } = floor;
  const { minX, minY, maxX, maxY } = extent;
  const labels: RoomLabel[] = [];
  // Every label is tested for every room, so the bounding box is tested first.
  for (const label of all) {
    const x = label.at[0];
    const y = label.at[1];
    if (x < minX || x > maxX || y < minY || y > maxY) continue;
    if (ringsCover(floor.centerRings, label.at)) labels.push(label);
  }
  const [label = null] = labels;
  const [x, y] = floor.labelPoint;
  return { ...room, key: label?.id ?? `room@${Math.round(x)},${Math.round(y)}`, label, labels };
}
