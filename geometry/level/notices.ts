import type { Level, RoomLabel, XY } from '../plan/model.ts';
import { type FindNear, nearbyOf } from '../plane/nearby.ts';
import { along, distance, nearestOnSegment } from '../plane/point.ts';
import { type Faces, OUTDOORS } from './faces.ts';
import { type GraphEdge, mainWall, type WallGraph } from './graph.ts';
import { nearOverlapNotices, pairsOf } from './near-overlaps.ts';
import { isHighDegree } from './node-joints.ts';
import type { Notice, OpeningBody, Room } from './types.ts';

/** A loose end is reported within this distance of another wall, mm: outdoors, where it leaves a room open, and indoors. */
const REPORTED_GAP = { outdoors: 1219.2, indoors: 152.4 };

/** Returns notices for coinciding and for nearly coinciding walls. */
export function overlapNotices({ nodes, edges, spans }: WallGraph): Notice[] {
  const overlapping = edges.flatMap(({ runs, from, to }): Notice[] => {
    if (runs.length < 2) return [];
    const ids = [...new Set(runs.filter(({ line }) => line.isDrawn).map(({ line }) => line.wall.id))].sort();
    if (ids.length < 2) return [];
    const [a, b] = [nodes[from] as XY, nodes[to] as XY];
    return [{ kind: 'walls-overlap', ids, at: along(a, b, 0.5), length: distance(a, b) }];
  });
  // The first wall in each group of coinciding walls represents the group, which is reported already.
  const leads = spans.flatMap(([lead]) => (lead?.isDrawn ? [lead.wall] : []));
  return [...overlapping, ...nearOverlapNotices(leads, new Set(overlapping.flatMap(({ ids }) => pairsOf(ids))))];
}

/** Returns a notice for each node of high degree: more walls meet there than in any house. */
export function highDegreeNotices(graph: WallGraph, { around }: Faces): Notice[] {
  const { nodes, edges } = graph;
  return around.flatMap((half, node): Notice[] => {
    if (!isHighDegree(graph, node, half)) return [];
    const ids = [...new Set(half.map((h) => mainWall((edges[h >> 1] as GraphEdge).walls).id))].sort();
    return [{ kind: 'walls-crowded', ids, at: nodes[node] as XY, length: null }];
  });
}

/** Returns a notice for each loose end with another wall within reach: probably a room that should be closed. */
export function gapNotices({ nodes, edges }: WallGraph, faces: Faces): Notice[] {
  const notices: Notice[] = [];
  let findNear: FindNear | null = null;
  faces.around.forEach((half, node) => {
    const [h] = half;
    if (half.length !== 1 || h === undefined) return;
    const own = h >> 1;
    const at = nodes[node] as XY;
    const limit = faces.faceOf[h] === OUTDOORS ? REPORTED_GAP.outdoors : REPORTED_GAP.indoors;
    let least = Number.POSITIVE_INFINITY;
    let nearest: GraphEdge | null = null;
    const { from, to } = edges[own] as GraphEdge;
    const foot = from === node ? to : from;
    findNear ??= nearbyOf(edges.map((edge) => [nodes[edge.from] as XY, nodes[edge.to] as XY]));
    // Of several walls at the same distance, the first is named.
    for (const k of findNear([at], limit).sort((one, two) => one - two)) {
      const edge = edges[k] as GraphEdge;
      // The walls at the foot of a stub are not walls that it misses.
      if (k === own || edge.from === foot || edge.to === foot) continue;
      const d = distance(at, nearestOnSegment(at, nodes[edge.from] as XY, nodes[edge.to] as XY));
      if (d >= least) continue;
      least = d;
      nearest = edge;
    }
    if (!nearest || least > limit) return;
    const ownWall = mainWall((edges[own] as GraphEdge).walls);
    const otherWall = mainWall(nearest.walls);
    if (ownWall === otherWall) return;
    notices.push({ kind: 'gap-open', ids: [ownWall.id, otherWall.id].sort(), at, length: least });
  });
  return notices;
}

/** Returns notices for labels in no room, for rooms with several labels, and for rooms without a label. */
export function labelNotices(level: Level, rooms: readonly Room[]): Notice[] {
  const placed = new Set(rooms.flatMap(({ labels }) => labels));
  const outside = level.rooms
    .filter((label) => !placed.has(label))
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
  return [...outside, ...shared, ...unlabelled];
}

/** Returns a notice for each passage in an outside wall, because it cannot be closed. */
export function passageNotices(openings: readonly OpeningBody[]): Notice[] {
  return openings
    .filter(({ outside, opening }) => outside && opening.kind === 'passage')
    .map(({ opening, body }): Notice => {
      return { kind: 'open-passage-outside', ids: [opening.id], at: body[0] as XY, length: opening.width };
    });
}
