import type { Level, Mm, Opening, RoomLabel, Wall, XY } from '../plan/model.ts';
import { comparePoints, distance } from '../point.ts';
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

/** What follows from the walls alone: not built anew while only other things are edited. */
interface WallModel {
  readonly graph: WallGraph;
  readonly faces: Faces;
  readonly pieces: readonly WallPiece[];
  readonly floors: readonly RoomFloor[];
  readonly notices: readonly Notice[];
}

/** A room before it has a name. */
type RoomFloor = Pick<Room, 'centreRings' | 'floorRings' | 'floorArea' | 'labelPoint'>;

const levelCache = new WeakMap<Level, LevelModel>();
const wallCache = new WeakMap<readonly Wall[], WallModel>();

/**
 * Rooms, wall pieces and opening bodies of a level, and what should be told about the drawing. Never throws on a level
 * that the reader accepts. The same Level object gives the same model; the same walls give the same pieces.
 */
export function buildLevel(level: Level): LevelModel {
  const known = levelCache.get(level);
  if (known) return known;
  const { graph, pieces, floors, notices } = wallModel(level.walls);
  const rooms = floors.map((floor) => namedRoom(floor, level.rooms));
  const openings = level.openings.map((opening) => openingBody(opening, level.walls, graph, pieces));
  const model: LevelModel = {
    level,
    rooms,
    pieces,
    openings,
    notices: [...notices, ...labelNotices(level, rooms), ...passageNotices(openings)],
  };
  levelCache.set(level, model);
  return model;
}

function wallModel(walls: readonly Wall[]): WallModel {
  const known = wallCache.get(walls);
  if (known) return known;
  const { lines, notices } = joinedCentreLines(walls);
  const graph = wallGraph(lines);
  const faces = traceFaces(graph);
  const halves = graph.edges.map((edge) => Math.max(THINNEST_HALF, mainWall(edge.walls).thickness / 2));
  const bodies = mitredBodies(graph, faces.around, halves);
  const model: WallModel = {
    graph,
    faces,
    pieces: graph.edges.map((edge, k) => wallPiece(graph, faces, edge, k, bodies[k] as Ring)),
    floors: roomFloors(faces, bodies),
    notices: [...notices, ...overlapNotices(graph), ...gapNotices(graph, faces)],
  };
  wallCache.set(walls, model);
  return model;
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

function roomFloors({ faces }: Faces, bodies: readonly Ring[]): RoomFloor[] {
  const standing = standingBodies(bodies);
  const floors: RoomFloor[] = [];
  for (const face of faces) {
    const { rings, area } = faceFloor(face, standing);
    const [outer] = rings;
    if (!outer || area < LEAST_FLOOR) continue;
    const holes = rings.filter((ring) => signedArea(ring) < 0 && ringContains(outer, ring[0] as XY));
    const labelPoint = ringLabelPoint([outer, ...holes]);
    floors.push({ centreRings: face.rings, floorRings: rings, floorArea: area, labelPoint });
  }
  return floors.sort((a, b) => comparePoints(a.labelPoint, b.labelPoint));
}

function namedRoom(floor: RoomFloor, all: readonly RoomLabel[]): Room {
  const labels = all.filter(({ at }) => pointInRings(floor.centreRings, at));
  const [label = null] = labels;
  const [x, y] = floor.labelPoint;
  return { ...floor, key: label?.id ?? `room@${Math.round(x)},${Math.round(y)}`, label, labels };
}

/** The rectangle of an opening, and whether any part of it is in a piece of outside wall. */
function openingBody(
  opening: Opening,
  walls: readonly Wall[],
  graph: WallGraph,
  pieces: readonly WallPiece[],
): OpeningBody {
  const wall = walls.find(({ id }) => id === opening.wall);
  if (!wall) throw new Error(`opening ${opening.id} is in wall ${opening.wall}, which is not on its level`);
  const length = distance(wall.from, wall.to);
  const ux = length > 0 ? (wall.to[0] - wall.from[0]) / length : 1;
  const uy = length > 0 ? (wall.to[1] - wall.from[1]) / length : 0;
  const half = wall.thickness / 2;
  const at = (s: Mm, t: Mm): XY => [wall.from[0] + ux * s - uy * t, wall.from[1] + uy * s + ux * t];
  const end = opening.offset + opening.width;
  const stretch = (p: XY) => (p[0] - wall.from[0]) * ux + (p[1] - wall.from[1]) * uy;
  let holders = 0;
  let outside = false;
  graph.edges.forEach(({ walls: here }, k) => {
    if (!here.includes(wall)) return;
    const piece = pieces[k] as WallPiece;
    const from = Math.min(stretch(piece.from), stretch(piece.to));
    const to = Math.max(stretch(piece.from), stretch(piece.to));
    if (Math.min(to, end) - Math.max(from, opening.offset) <= 0.01) return;
    holders++;
    if (piece.outside) outside = true;
  });
  return {
    opening,
    // No piece holds it: nothing is known of its wall, so the greater distance is kept.
    outside: outside || holders === 0,
    body: [at(opening.offset, -half), at(end, -half), at(end, half), at(opening.offset, half)],
  };
}
