import type { Ring } from '../../../geometry/level/types.ts';
import type { XY } from '../../../geometry/plan/model.ts';
import type { ArcRing, Edge, LevelRegion, Zone } from '../../../geometry/region/types.ts';
import type { Stretch } from '../../../geometry/region/visible-edges.ts';
import { remembered } from '../../../geometry/remembered.ts';
import { type HatchName, roomHatch, ruleHatch } from '../../design/hatches.ts';
import { drawnEdges } from '../drawing.ts';
import type { Pen } from './pen.ts';

/** What is hatched, and with what. */
export interface Hatched {
  readonly hatch: HatchName;
  readonly path: Path2D;
}

/** The outlines of a region in plan mm, made once: a pan or a zoom only lays them on the screen anew. */
interface RegionPaths {
  /** Every floor; and of the rooms that are not out as a whole. */
  readonly floors: Path2D;
  readonly openFloors: Path2D;
  /** Where a detector may sit. */
  readonly white: Path2D;
  readonly barred: readonly Hatched[];
  readonly zones: readonly Hatched[];
  readonly zoneEdges: Path2D;
}

export const regionPaths: (region: LevelRegion) => RegionPaths = remembered((region) => {
  const rooms = region.rooms.map((room) => ({ ...room, floor: ringsPath(room.room.floorRings) }));
  const barred = rooms.flatMap((room) => {
    const hatch = roomHatch(room);
    return hatch ? [{ hatch, path: room.floor }] : [];
  });
  return {
    floors: joined(rooms.map(({ floor }) => floor)),
    openFloors: joined(rooms.filter((room) => !room.barred).map(({ floor }) => floor)),
    white: arcRingsPath(rooms.flatMap(({ rings }) => rings)),
    barred,
    zones: zonesByHatch(region.zones),
    zoneEdges: stretchesPath([...drawnEdges(region).values()].flat()),
  };
});

export const zonePath: (zone: Zone) => Path2D = remembered(({ outlines }) => arcRingsPath(outlines));

/** A path of plan mm where it lies on the screen. Line widths and hatches stay screen px. */
export function onScreen({ view }: Pen, path: Path2D): Path2D {
  const laid = new Path2D();
  laid.addPath(path, new DOMMatrix([view.scale, 0, 0, view.scale, view.x, view.y]));
  return laid;
}

function zonesByHatch(zones: readonly Zone[]): readonly Hatched[] {
  const paths = new Map<HatchName, Path2D>();
  for (const zone of zones) {
    const hatch = ruleHatch(zone.rule);
    if (!hatch) continue;
    const path = paths.get(hatch) ?? new Path2D();
    path.addPath(zonePath(zone));
    paths.set(hatch, path);
  }
  return [...paths].map(([hatch, path]) => ({ hatch, path }));
}

function joined(paths: readonly Path2D[]): Path2D {
  const whole = new Path2D();
  for (const path of paths) whole.addPath(path);
  return whole;
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
