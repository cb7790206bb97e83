import { assert } from '../assert.ts';
import { type Extent, ringExtent } from '../body.ts';
import type { Level, Mm, Opening, RoomLabel, Wall, XY } from '../plan/model.ts';
import { comparePoints, distance } from '../point.ts';
import { Scratch } from '../region/free-boundary.ts';
import { Nearby } from '../region/nearby.ts';
import { remembered, rememberedLately } from '../remembered.ts';
import { ringContains, signedArea } from '../ring.ts';
import { pointInRings, ringLabelPoint } from '../turf.ts';
import { joinedCentreLines } from './centre-lines.ts';
import { type Faces, OUTDOORS, traceFaces } from './faces.ts';
import { faceFloor, standingBodies } from './floors.ts';
import { type GraphEdge, mainWall, type WallGraph, wallGraph } from './graph.ts';
import { mitredBodies } from './mitre.ts';
import { gapNotices, labelNotices, overlapNotices, passageNotices } from './notices.ts';
import type { LevelModel, Notice, OpeningBody, Ring, Room, WallPiece } from './types.ts';

/** A wall drawn without thickness is given this half, mm, so that it still parts two rooms. */
const THINNEST_HALF: Mm = 0.001;

/** A floor of less than this, square mm, is what walls leave of a face that they fill. */
const LEAST_FLOOR = 1;

/** More levels than a house has, twice over; a model of each step that can be taken back would fill the memory. */
const MOST_REMEMBERED = 24;

/** What follows from the walls alone, and what is kept of the rest as long as the walls stay. */
interface WallModel {
  readonly pieces: readonly WallPiece[];
  readonly notices: readonly Notice[];
  readonly roomsOf: (labels: readonly RoomLabel[]) => readonly Room[];
  readonly openingsOf: (openings: readonly Opening[]) => readonly OpeningBody[];
}

/**
 * Rooms, wall pieces and opening bodies of a level, and what should be told about the drawing. Never throws on a level
 * that the reader accepts. The same Level object gives the same model as long as it is one of the last that were asked about;
 * what an edit leaves alone is not built again.
 */
export const buildLevel: (level: Level) => LevelModel = rememberedLately((level: Level) => {
  const { pieces, notices, roomsOf, openingsOf } = wallModel(level.walls);
  const rooms = roomsOf(level.rooms);
  const openings = openingsOf(level.openings);
  return {
    level,
    rooms,
    pieces,
    openings,
    notices: [...notices, ...labelNotices(level, rooms), ...passageNotices(openings)],
  };
}, MOST_REMEMBERED);

const wallModel = rememberedLately((walls: readonly Wall[]): WallModel => {
  const { lines, notices } = joinedCentreLines(walls);
  const graph = wallGraph(lines);
  const faces = traceFaces(graph);
  const halves = graph.edges.map((edge) => Math.max(THINNEST_HALF, mainWall(edge.walls).thickness / 2));
  const bodies = mitredBodies(graph, faces.around, halves);
  const pieces = graph.edges.map((edge, k) => wallPiece(graph, faces, edge, k, bodies[k] as Ring));
  const floors = roomFloors(faces, bodies);
  const piecesOf = piecesByWall(graph, pieces);
  const opening = remembered((one: Opening) => openingBody(one, walls, piecesOf));
  return {
    pieces,
    notices: [...notices, ...overlapNotices(graph), ...gapNotices(graph, faces)],
    roomsOf: remembered((labels: readonly RoomLabel[]) => floors.map((floor) => namedRoom(floor, labels))),
    openingsOf: remembered((openings: readonly Opening[]) => openings.map(opening)),
  };
}, MOST_REMEMBERED);

function piecesByWall(graph: WallGraph, pieces: readonly WallPiece[]): Map<Wall, WallPiece[]> {
  const map = new Map<Wall, WallPiece[]>();
  graph.edges.forEach(({ walls }, k) => {
    for (const wall of walls) {
      const own = map.get(wall);
      if (own) own.push(pieces[k] as WallPiece);
      else map.set(wall, [pieces[k] as WallPiece]);
    }
  });
  return map;
}

function wallPiece(graph: WallGraph, faces: Faces, edge: GraphEdge, k: number, body: Ring): WallPiece {
  const wall = mainWall(edge.walls);
  const bordersOutdoors = faces.faceOf[2 * k] === OUTDOORS || faces.faceOf[2 * k + 1] === OUTDOORS;
  const sides = edge.walls.map(({ side }) => side);
  // Where walls overlap and disagree, the reading that keeps the greater distance counts.
  const outside = sides.includes('outside') || (bordersOutdoors && sides.includes('auto'));
  return {
    wall,
    from: graph.nodes[edge.from] as XY,
    to: graph.nodes[edge.to] as XY,
    thickness: wall.thickness,
    outside,
    body,
  };
}

/** A room before it has a name. */
type RoomFloor = Omit<Room, 'key' | 'label' | 'labels'> & { readonly extent: Extent };

function roomFloors({ faces }: Faces, bodies: readonly Ring[]): RoomFloor[] {
  const standing = new Nearby(standingBodies(bodies));
  const scratch = new Scratch();
  const floors: RoomFloor[] = [];
  for (const face of faces) {
    const { rings, area } = faceFloor(face, standing, scratch);
    const [outer] = rings;
    const [centreRing] = face.rings;
    if (!outer || !centreRing || area < LEAST_FLOOR) continue;
    const holes = rings.filter((ring) => signedArea(ring) < 0 && ringContains(outer, ring[0] as XY));
    const labelPoint = ringLabelPoint([outer, ...holes]);
    const extent = ringExtent(centreRing);
    floors.push({ centreRings: face.rings, floorRings: rings, floorArea: area, labelPoint, extent });
  }
  return floors.sort((a, b) => comparePoints(a.labelPoint, b.labelPoint));
}

function namedRoom({ extent, ...floor }: RoomFloor, all: readonly RoomLabel[]): Room {
  const labels = all.filter(({ at }) => holdsPoint(extent, at) && pointInRings(floor.centreRings, at));
  const [label = null] = labels;
  const [x, y] = floor.labelPoint;
  return { ...floor, key: label?.id ?? `room@${Math.round(x)},${Math.round(y)}`, label, labels };
}

function holdsPoint({ minX, minY, maxX, maxY }: Extent, [x, y]: XY): boolean {
  return x >= minX && x <= maxX && y >= minY && y <= maxY;
}

/** The rectangle of an opening, and whether any part of it is in a piece of outside wall. */
function openingBody(
  opening: Opening,
  walls: readonly Wall[],
  piecesOf: ReadonlyMap<Wall, readonly WallPiece[]>,
): OpeningBody {
  const wall = walls.find(({ id }) => id === opening.wall);
  assert(wall !== undefined, `opening ${opening.id} is in wall ${opening.wall}, which is not on its level`);
  const length = distance(wall.from, wall.to);
  const ux = length > 0 ? (wall.to[0] - wall.from[0]) / length : 1;
  const uy = length > 0 ? (wall.to[1] - wall.from[1]) / length : 0;
  const half = wall.thickness / 2;
  const at = (s: Mm, t: Mm): XY => [wall.from[0] + ux * s - uy * t, wall.from[1] + uy * s + ux * t];
  const end = opening.offset + opening.width;
  const stretch = (p: XY) => (p[0] - wall.from[0]) * ux + (p[1] - wall.from[1]) * uy;
  const holders = (piecesOf.get(wall) ?? []).filter((piece) => {
    const from = Math.min(stretch(piece.from), stretch(piece.to));
    const to = Math.max(stretch(piece.from), stretch(piece.to));
    return Math.min(to, end) - Math.max(from, opening.offset) > 0.01;
  });
  return {
    opening,
    // No piece holds it: nothing is known of its wall, so the greater distance is kept.
    outside: holders.length === 0 || holders.some(({ outside }) => outside),
    body: [at(opening.offset, -half), at(end, -half), at(end, half), at(opening.offset, half)],
  };
}
