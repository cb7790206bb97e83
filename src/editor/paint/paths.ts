import type { ArcRing, Edge } from '../../../geometry/arrangement/types.ts';
import type { XY } from '../../../geometry/plan/model.ts';
import type { Extent } from '../../../geometry/plane/body.ts';
import { memoize } from '../../../geometry/plane/memoize.ts';
import type { Ring } from '../../../geometry/plane/types.ts';
import type { LevelRegion, RoomRegion, Zone } from '../../../geometry/region/types.ts';
import { type Stretch, zoneExtent } from '../../../geometry/region/visible-edges.ts';
import { drawnEdges, pulledEdges } from '../drawing.ts';
import { roomExtent } from '../extents.ts';
import { isSeen, type Pen } from './pen.ts';

/** The outlines of a room in plan mm, made once: a pan or a zoom only lays them on the screen anew. */
interface RoomPaths {
  readonly extent: Extent;
  readonly floor: Path2D;
  /** Where a detector may sit. */
  readonly white: Path2D;
}

const roomPaths = memoize(
  (region: RoomRegion): RoomPaths => ({
    extent: roomExtent(region),
    floor: ringsPath(region.room.floorRings),
    white: arcRingsPath(region.rings),
  }),
);
const zonePath: (zone: Zone) => Path2D = memoize(({ outlines }) => arcRingsPath(outlines));
const edgesPath: (stretches: readonly Stretch[]) => Path2D = memoize(stretchesPath);

/** The floors that are to be seen, where they lie on the screen. */
export function floorsOnScreen(pen: Pen, rooms: readonly RoomRegion[]): Path2D {
  return onScreen(pen, seenRooms(pen, rooms), ({ floor }) => floor);
}

/** Where a detector may sit, of the rooms that are to be seen. */
export function whiteOnScreen(pen: Pen, rooms: readonly RoomRegion[]): Path2D {
  return onScreen(pen, seenRooms(pen, rooms), ({ white }) => white);
}

function seenRooms(pen: Pen, rooms: readonly RoomRegion[]): readonly RoomPaths[] {
  return rooms.map(roomPaths).filter(({ extent }) => isSeen(pen, extent));
}

export function zonesOnScreen(pen: Pen, zones: readonly Zone[]): Path2D {
  return onScreen(pen, seenZones(pen, zones), zonePath);
}

/** What is seen of the zones' edges, one over another left out. */
export function zoneEdgesOnScreen(pen: Pen, region: LevelRegion, pulled: boolean): Path2D {
  const edges = pulled ? pulledEdges(region) : drawnEdges(region);
  return onScreen(pen, seenZones(pen, region.zones), (zone) => edgesPath(edges.get(zone) ?? NO_STRETCHES));
}

const NO_STRETCHES: readonly Stretch[] = [];

function seenZones(pen: Pen, zones: readonly Zone[]): readonly Zone[] {
  return zones.filter((zone) => isSeen(pen, zoneExtent(zone)));
}

/** Paths of plan mm as one, where they lie on the screen. Line widths and hatches stay screen px. */
function onScreen<T>({ view }: Pen, parts: readonly T[], pathOf: (part: T) => Path2D): Path2D {
  const laid = new Path2D();
  const place = new DOMMatrix([view.scale, 0, 0, view.scale, view.x, view.y]);
  for (const part of parts) laid.addPath(pathOf(part), place);
  return laid;
}

function ringsPath(rings: readonly Ring[]): Path2D {
  const path = new Path2D();
  for (const ring of rings) {
    ring.forEach((point, index) => {
      if (index === 0) path.moveTo(...point);
      else path.lineTo(...point);
    });
    path.closePath();
  }
  return path;
}

function arcRingsPath(rings: readonly ArcRing[]): Path2D {
  const path = new Path2D();
  for (const ring of rings) {
    traceEdges(path, ring);
    path.closePath();
  }
  return path;
}

function stretchesPath(stretches: readonly Stretch[]): Path2D {
  const path = new Path2D();
  for (const stretch of stretches) traceEdges(path, stretch);
  return path;
}

/** Lines and true arcs, each starting where the one before ends. */
function traceEdges(path: Path2D, edges: readonly Edge[]): void {
  edges.forEach((edge, index) => {
    // A first edge must not be joined to what was drawn before.
    if (index === 0) path.moveTo(...startOf(edge));
    if (edge.kind === 'line') path.lineTo(...edge.to);
    else path.arc(...edge.center, edge.radius, edge.start, edge.start + edge.sweep, edge.sweep < 0);
  });
}

function startOf(edge: Edge): XY {
  if (edge.kind === 'line') return edge.from;
  const { center, radius, start } = edge;
  return [center[0] + radius * Math.cos(start), center[1] + radius * Math.sin(start)];
}
