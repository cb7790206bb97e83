import { Scratch } from '../arrangement/free-boundary.ts';
import { Nearby } from '../arrangement/nearby.ts';
import type { Level, Opening, RoomLabel, Wall, XY } from '../plan/model.ts';
import { type Extent, ringExtent } from '../plane/body.ts';
import { ringLabelPoint } from '../plane/label-point.ts';
import { memoize, memoizeRecent } from '../plane/memoize.ts';
import { comparePoints, distance } from '../plane/point.ts';
import { ringContains, ringsCover, signedArea } from '../plane/ring.ts';
import type { Ring } from '../plane/types.ts';
import { type Bodies, type Joint, type Part, type Stretch, wallBodies } from './bodies.ts';
import { joinedCentreLines } from './centre-lines.ts';
import { type Faces, traceFaces } from './faces.ts';
import { faceFloor, standingBodies } from './floors.ts';
import { type GraphEdge, type WallGraph, wallGraph } from './graph.ts';
import { crowdNotices, gapNotices, labelNotices, overlapNotices, passageNotices } from './notices.ts';
import { type Holders, holdersOf, openingBody } from './openings.ts';
import { cavityTest, edgesOutdoors, type FaceKind, LEAST_FLOOR } from './outdoors.ts';
import { TOUCH } from './touch.ts';
import type { LevelModel, Notice, OpeningBody, Room, WallJoint, WallPiece } from './types.ts';

/** More levels than a house has, twice over; a model of each step that can be taken back would fill the memory. */
const MOST_REMEMBERED = 24;

/** What follows from the walls alone, and what is kept of the rest as long as the walls stay. */
interface WallModel {
  readonly noticesOf: () => readonly Notice[];
  readonly roomsOf: (labels: readonly RoomLabel[]) => readonly Room[];
  readonly sidesOf: (labels: readonly RoomLabel[]) => Sides;
}

/** What hangs on where the outdoors is. */
interface Sides {
  readonly pieces: readonly WallPiece[];
  readonly joints: readonly WallJoint[];
  readonly openingsOf: (openings: readonly Opening[]) => readonly OpeningBody[];
}

/**
 * Rooms, wall pieces and opening bodies of a level, and what should be told about the drawing. Never throws on a level
 * that the reader accepts. The same Level object gives the same model as long as it is one of the last that were asked about;
 * what an edit leaves alone is not built again.
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
    // No distance and no region hangs on them: they are put together when somebody asks.
    get notices() {
      notices ??= [...noticesOf(), ...labelNotices(level, rooms), ...passageNotices(openings)];
      return notices;
    },
  };
}, MOST_REMEMBERED);

const wallModel = memoizeRecent((walls: readonly Wall[]): WallModel => {
  const { lines, notices } = joinedCentreLines(walls);
  const graph = wallGraph(lines);
  const faces = traceFaces(graph);
  const bodies = wallBodies(graph, faces);
  const floors = roomFloors(faces, bodies);
  const holders = holdersOf(walls, graph);
  /** The outdoors hangs on which faces have a label: names may change, nothing is built again. */
  const sides = new Map<string, Sides>();
  const isCavity = cavityTest(graph, faces);
  const narrow = memoizeFaces(floors, ({ face, labelPoint }) => isCavity(face, labelPoint));
  const roomsOf = memoize((labels: readonly RoomLabel[]) => floors.map((floor) => namedRoom(floor, labels)));
  let told: readonly Notice[] | null = null;
  return {
    noticesOf: () => {
      told ??= [...notices, ...overlapNotices(graph), ...crowdNotices(graph, faces), ...gapNotices(graph, faces)];
      return told;
    },
    roomsOf,
    sidesOf: memoize((labels: readonly RoomLabel[]) => {
      const rooms = roomsOf(labels);
      const labelled = new Set(floors.filter((_, i) => rooms[i]?.label).map(({ face }) => face));
      const key = [...labelled].join(' ');
      const known = sides.get(key);
      if (known) return known;
      const kinds = faces.faces.map((_, face): FaceKind => {
        const isNarrow = narrow.get(face);
        return { hasFloor: isNarrow !== undefined, hasLabel: labelled.has(face), isNarrow: isNarrow ?? (() => true) };
      });
      const made = sidesFrom(graph, bodies, holders, edgesOutdoors(graph, faces, kinds));
      sides.set(key, made);
      return made;
    }),
  };
}, MOST_REMEMBERED);

/** For each face with a floor the answer to a question that is asked once, and only if somebody wants to know. */
function memoizeFaces(floors: readonly RoomFloor[], ask: (floor: RoomFloor) => boolean): Map<number, () => boolean> {
  return new Map(
    floors.map((floor) => {
      let answer: boolean | null = null;
      return [
        floor.face,
        () => {
          answer ??= ask(floor);
          return answer;
        },
      ];
    }),
  );
}

function sidesFrom(graph: WallGraph, bodies: Bodies, holders: Holders, isOutdoors: readonly boolean[]): Sides {
  const isOutside = graph.edges.map(({ walls }, k) => readsOutside(walls, isOutdoors[k] as boolean));
  const isShort = graph.edges.map(
    ({ from, to }) => distance(graph.nodes[from] as XY, graph.nodes[to] as XY) <= 2 * TOUCH,
  );
  // Walls that come within a touch of each other do not run on one another: each of them reads for itself.
  const isPartOutside = ({ edge, walls }: Part) =>
    isShort[edge] ? readsOutside(walls, isOutdoors[edge] as boolean) : (isOutside[edge] as boolean);
  const opening = memoize((one: Opening) => openingBody(one, holders, graph, isOutside));
  return {
    pieces: bodies.stretches.map((stretch) => wallPiece(graph, stretch, isPartOutside(stretch))),
    joints: bodies.joints.flatMap((joint) => wallJoint(graph, joint, isPartOutside)),
    openingsOf: memoize((openings: readonly Opening[]) => openings.map(opening)),
  };
}

/** Where walls overlap and disagree, the reading that keeps the greater distance counts. */
function readsOutside(walls: readonly Wall[], bordersOutdoors: boolean): boolean {
  return walls.some(({ side }) => side === 'outside' || (side === 'auto' && bordersOutdoors));
}

function wallPiece({ nodes, edges }: WallGraph, { edge, wall, ring }: Stretch, outside: boolean): WallPiece {
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

/** A joint counts when it stands out from the walls that meet, or when those that hold it keep less distance than it does. */
function wallJoint({ nodes }: WallGraph, joint: Joint, isOutside: (part: Part) => boolean): WallJoint[] {
  const { node, parts, walls, ring, isHeld, heldBy } = joint;
  const outside = parts.filter(isOutside).length >= 2;
  if (outside ? heldBy.some(isOutside) : isHeld) return [];
  return [{ walls, at: nodes[node] as XY, outside, body: ring }];
}

/** A room before it has a name. */
type RoomFloor = Omit<Room, 'key' | 'label' | 'labels'> & { readonly extent: Extent; readonly face: number };

function roomFloors({ faces, faceOf }: Faces, bodies: Bodies): RoomFloor[] {
  const standing = new Nearby(standingBodies(bodies.standing));
  const own: Ring[][] = faces.map(() => []);
  for (const { edge, ring } of bodies.stretches) {
    for (const h of [2 * edge, 2 * edge + 1]) own[faceOf[h] as number]?.push(ring);
  }
  const scratch = new Scratch();
  const floors: RoomFloor[] = [];
  faces.forEach((face, index) => {
    const { rings, area } = faceFloor(face, standing, scratch, own[index]);
    const [outer] = rings;
    const [centreRing] = face.rings;
    if (!outer || !centreRing || area < LEAST_FLOOR) return;
    const holes = rings.filter((ring) => signedArea(ring) < 0 && ringContains(outer, ring[0] as XY));
    const labelPoint = ringLabelPoint([outer, ...holes]);
    const extent = ringExtent(centreRing);
    floors.push({ centreRings: face.rings, floorRings: rings, floorArea: area, labelPoint, extent, face: index });
  });
  return floors.sort((a, b) => comparePoints(a.labelPoint, b.labelPoint));
}

function namedRoom(floor: RoomFloor, all: readonly RoomLabel[]): Room {
  const { extent, face: _, ...room } = floor;
  const labels = all.filter(({ at }) => holdsPoint(extent, at) && ringsCover(floor.centreRings, at));
  const [label = null] = labels;
  const [x, y] = floor.labelPoint;
  return { ...room, key: label?.id ?? `room@${Math.round(x)},${Math.round(y)}`, label, labels };
}

function holdsPoint({ minX, minY, maxX, maxY }: Extent, [x, y]: XY): boolean {
  return x >= minX && x <= maxX && y >= minY && y <= maxY;
}
