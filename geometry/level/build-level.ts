import type { Level, Mm, Opening, RoomLabel, Wall, XY } from '../plan/model.ts';
import { comparePoints, distance, nearestOnSegment } from '../point.ts';
import { signedArea } from '../ring.ts';
import { pointInRings, ringLabelPoint } from '../turf.ts';
import { joinedCentreLines } from './centre-lines.ts';
import { type Faces, OUTDOORS, traceFaces } from './faces.ts';
import { faceFloor, standingBodies } from './floors.ts';
import { type GraphEdge, type WallGraph, wallGraph } from './graph.ts';
import { mitredBodies } from './mitre.ts';
import type { LevelModel, Notice, OpeningBody, Ring, Room, WallPiece } from './types.ts';

/** A wall drawn without thickness is given this half, mm, so that it still parts two rooms. */
const THINNEST_HALF: Mm = 0.001;

/** A floor of less than this, square mm, is what walls leave of a face that they fill. */
const LEAST_FLOOR = 1;

/** How far off another wall may be for a loose end to be reported: outdoors, where it leaves a room open, and indoors. */
const REPORTED_GAP = { outdoors: 1219.2, indoors: 152.4 };

const cache = new WeakMap<Level, LevelModel>();

/**
 * Rooms, wall pieces and opening bodies of a level, and what should be told about the drawing. Never throws on a level
 * that the reader accepts. The same Level object gives the same model.
 */
export function buildLevel(level: Level): LevelModel {
  const known = cache.get(level);
  if (known) return known;
  const { lines, notices } = joinedCentreLines(level.walls);
  const graph = wallGraph(lines);
  const faces = traceFaces(graph);
  const halves = graph.edges.map(({ walls }) => Math.max(THINNEST_HALF, mainWall(walls).thickness / 2));
  const bodies = mitredBodies(graph, faces.around, halves);
  const pieces = graph.edges.map((edge, k) => wallPiece(graph, faces, edge, k, bodies[k] as Ring));
  const rooms = buildRooms(level, faces, bodies);
  const model: LevelModel = {
    level,
    rooms,
    pieces,
    openings: level.openings.map((opening) => openingBody(opening, level.walls, graph, pieces)),
    notices: [
      ...notices,
      ...overlapNotices(graph),
      ...gapNotices(graph, faces),
      ...labelNotices(level, rooms),
      ...passageNotices(level, graph, pieces),
    ],
  };
  cache.set(level, model);
  return model;
}

/** Of walls that run on one another the thickest counts; of equals the first id. */
function mainWall(walls: readonly Wall[]): Wall {
  return walls.reduce((best, wall) =>
    wall.thickness > best.thickness || (wall.thickness === best.thickness && wall.id < best.id) ? wall : best,
  );
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

function buildRooms(level: Level, { faces }: Faces, bodies: readonly Ring[]): Room[] {
  const standing = standingBodies(bodies);
  const rooms: Room[] = [];
  for (const face of faces) {
    const { rings, area } = faceFloor(face, standing);
    const [outer] = rings;
    if (!outer || area < LEAST_FLOOR) continue;
    const labels = level.rooms.filter(({ at }) => pointInRings(face.rings, at));
    const holes = rings.filter((ring) => signedArea(ring) < 0);
    const labelPoint = ringLabelPoint([outer, ...holes.filter((hole) => pointInRings([outer], hole[0] as XY))]);
    rooms.push({
      key: labels[0]?.id ?? `room@${Math.round(labelPoint[0])},${Math.round(labelPoint[1])}`,
      label: labels[0] ?? null,
      labels,
      centreRings: face.rings,
      floorRings: rings,
      floorArea: area,
      labelPoint,
    });
  }
  return rooms.sort((a, b) => comparePoints(a.labelPoint, b.labelPoint));
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

function overlapNotices({ nodes, edges }: WallGraph): Notice[] {
  return edges
    .filter(({ walls }) => walls.length > 1)
    .map(({ walls, from, to }): Notice => {
      const [a, b] = [nodes[from] as XY, nodes[to] as XY];
      const ids = walls.map(({ id }) => id).sort();
      return { kind: 'walls-overlap', ids, at: [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2], length: distance(a, b) };
    });
}

/** Ends that meet nothing and have another wall within reach: a room that somebody meant to close. */
function gapNotices({ nodes, edges }: WallGraph, faces: Faces): Notice[] {
  const notices: Notice[] = [];
  faces.around.forEach((half, node) => {
    const [h] = half;
    if (half.length !== 1 || h === undefined) return;
    const own = h >> 1;
    const at = nodes[node] as XY;
    let least = Number.POSITIVE_INFINITY;
    let nearest: GraphEdge | null = null;
    edges.forEach((edge, k) => {
      if (k === own) return;
      const d = distance(at, nearestOnSegment(at, nodes[edge.from] as XY, nodes[edge.to] as XY));
      if (d < least) {
        least = d;
        nearest = edge;
      }
    });
    const limit = faces.faceOf[h] === OUTDOORS ? REPORTED_GAP.outdoors : REPORTED_GAP.indoors;
    if (!nearest || least > limit) return;
    const ownWall = mainWall((edges[own] as GraphEdge).walls);
    const otherWall = mainWall((nearest as GraphEdge).walls);
    if (ownWall === otherWall) return;
    notices.push({ kind: 'gap-open', ids: [ownWall.id, otherWall.id].sort(), at, length: least });
  });
  return notices;
}

function labelNotices(level: Level, rooms: readonly Room[]): Notice[] {
  const housed = new Set(rooms.flatMap(({ labels }) => labels));
  const astray = level.rooms
    .filter((label) => !housed.has(label))
    .map(({ id, at }: RoomLabel): Notice => ({ kind: 'label-outside-rooms', ids: [id], at, length: null }));
  const shared = rooms
    .filter(({ labels }) => labels.length > 1)
    .map(
      ({ labels, labelPoint }): Notice => ({
        kind: 'labels-share-room',
        ids: labels.map(({ id }) => id),
        at: labelPoint,
        length: null,
      }),
    );
  const unlabelled = rooms
    .filter(({ label }) => !label)
    .map(({ labelPoint }): Notice => ({ kind: 'unlabelled-room', ids: [], at: labelPoint, length: null }));
  return [...astray, ...shared, ...unlabelled];
}

function passageNotices(level: Level, graph: WallGraph, pieces: readonly WallPiece[]): Notice[] {
  return level.openings
    .filter(({ kind }) => kind === 'passage')
    .map((opening) => openingBody(opening, level.walls, graph, pieces))
    .filter(({ outside }) => outside)
    .map(({ opening, body }): Notice => {
      return { kind: 'open-passage-outside', ids: [opening.id], at: body[0] as XY, length: opening.width };
    });
}
