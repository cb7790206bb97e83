import Flatbush from 'flatbush';
import type { Mm, Wall, XY } from '../plan/model.ts';
import { comparePoints, cross, distance, nearestOnSegment } from '../point.ts';
import type { Notice } from './types.ts';

/**
 * Two points this close are one, mm. A hundredth of a millimetre: far below any tape, far above the rounding of
 * coordinates in a plan of house size.
 */
export const TOUCH: Mm = 0.01;

/**
 * A loose wall end this near to another wall is joined to it, and the joint is reported. Half an inch: what a hand-drawn
 * corner misses by, and less than any gap that somebody means.
 */
export const SNAP: Mm = 12.7;

/** A centre-line that may have been moved at its ends by the joining of loose ends. */
export interface CentreLine {
  readonly wall: Wall;
  a: XY;
  b: XY;
}

interface LooseEnd {
  readonly line: CentreLine;
  readonly end: 'a' | 'b';
  readonly at: XY;
}

/**
 * The centre-lines of the walls in an order and direction that do not depend on the file, with loose ends joined:
 * ends that nearly meet go to the crossing of their lines (so that no wall turns), an end that stops just short of a
 * wall or just past it goes to the crossing with that wall. Every joint, and every wall without length, is a notice.
 */
export function joinedCentreLines(walls: readonly Wall[]): { lines: CentreLine[]; notices: Notice[] } {
  const notices: Notice[] = [];
  const lines: CentreLine[] = [];
  for (const wall of walls) {
    if (distance(wall.from, wall.to) <= TOUCH) {
      notices.push({ kind: 'zero-length-wall', ids: [wall.id], at: wall.from, length: 0 });
      continue;
    }
    const forward = comparePoints(wall.from, wall.to) <= 0;
    lines.push({ wall, a: forward ? wall.from : wall.to, b: forward ? wall.to : wall.from });
  }
  lines.sort((s, t) => comparePoints(s.a, t.a) || comparePoints(s.b, t.b) || (s.wall.id < t.wall.id ? -1 : 1));
  joinLooseEnds(lines, notices);
  return { lines: lines.filter(({ a, b }) => distance(a, b) > TOUCH), notices };
}

function joinLooseEnds(lines: CentreLine[], notices: Notice[]): void {
  const loose = looseEnds(lines);
  const taken = new Set<LooseEnd>();
  for (const group of groupsWithin(loose)) {
    for (const end of group) taken.add(end);
    const target = meetingPoint(group);
    for (const end of group) moveEnd(end, target);
    notices.push({
      kind: 'gap-closed',
      ids: [...new Set(group.map(({ line }) => line.wall.id))].sort(),
      at: target,
      length: widestGap(group),
    });
  }
  for (const end of loose) if (!taken.has(end)) joinToWall(end, lines, notices);
}

/** Ends that touch no other wall. */
function looseEnds(lines: readonly CentreLine[]): LooseEnd[] {
  if (lines.length === 0) return [];
  const index = new Flatbush(lines.length);
  for (const { a, b } of lines) {
    index.add(Math.min(a[0], b[0]), Math.min(a[1], b[1]), Math.max(a[0], b[0]), Math.max(a[1], b[1]));
  }
  index.finish();
  const found: LooseEnd[] = [];
  for (const line of lines) {
    for (const end of ['a', 'b'] as const) {
      const at = line[end];
      const near = index.search(at[0] - TOUCH, at[1] - TOUCH, at[0] + TOUCH, at[1] + TOUCH);
      const touches = near.some((i) => {
        const other = lines[i] as CentreLine;
        return other !== line && distance(at, nearestOnSegment(at, other.a, other.b)) <= TOUCH;
      });
      if (!touches) found.push({ line, end, at });
    }
  }
  return found;
}

/** Loose ends of different walls that lie within the snap distance of each other, chained; only groups of two and more. */
function groupsWithin(loose: readonly LooseEnd[]): LooseEnd[][] {
  const groups: LooseEnd[][] = [];
  const done = new Set<LooseEnd>();
  for (const first of loose) {
    if (done.has(first)) continue;
    const group = [first];
    done.add(first);
    for (let i = 0; i < group.length; i++) {
      for (const other of loose) {
        const member = group[i] as LooseEnd;
        // A wall shorter than the snap distance keeps its two ends apart.
        if (done.has(other) || group.some(({ line }) => line === other.line)) continue;
        if (distance(member.at, other.at) > SNAP) continue;
        done.add(other);
        group.push(other);
      }
    }
    if (group.length > 1) groups.push(group);
  }
  return groups;
}

/** Where the lines of the ends cross, if that is near all of them; else the middle of the ends. */
function meetingPoint(group: readonly LooseEnd[]): XY {
  // Least squares over the lines: minimise the sum of squared distances to them.
  let xx = 0;
  let xy = 0;
  let yy = 0;
  let rx = 0;
  let ry = 0;
  const [ox, oy] = (group[0] as LooseEnd).at;
  for (const { line, at } of group) {
    const length = distance(line.a, line.b);
    const nx = -(line.b[1] - line.a[1]) / length;
    const ny = (line.b[0] - line.a[0]) / length;
    const off = nx * (at[0] - ox) + ny * (at[1] - oy);
    xx += nx * nx;
    xy += nx * ny;
    yy += ny * ny;
    rx += nx * off;
    ry += ny * off;
  }
  const determinant = xx * yy - xy * xy;
  if (determinant > 1e-6) {
    const target: XY = [ox + (yy * rx - xy * ry) / determinant, oy + (xx * ry - xy * rx) / determinant];
    if (group.every(({ at }) => distance(at, target) <= 2 * SNAP)) return target;
  }
  const n = group.length;
  return [group.reduce((sum, { at }) => sum + at[0], 0) / n, group.reduce((sum, { at }) => sum + at[1], 0) / n];
}

function joinToWall(end: LooseEnd, lines: readonly CentreLine[], notices: Notice[]): void {
  let nearest: CentreLine | null = null;
  let least: Mm = SNAP;
  for (const other of lines) {
    if (other === end.line) continue;
    const d = distance(end.at, nearestOnSegment(end.at, other.a, other.b));
    // Touching by now: a group joined something to this very place.
    if (d <= TOUCH) return;
    if (d <= least) {
      if (d === least && nearest) continue;
      least = d;
      nearest = other;
    }
  }
  if (!nearest) return;
  const far = end.line[end.end === 'a' ? 'b' : 'a'];
  if (distance(far, end.at) <= SNAP && distance(far, nearestOnSegment(far, nearest.a, nearest.b)) <= TOUCH) return;
  const target = crossingNear(end, nearest);
  const past = cross(nearest.a, nearest.b, far) * cross(nearest.a, nearest.b, end.at) < 0;
  notices.push({
    kind: past ? 'overshoot-trimmed' : 'gap-closed',
    ids: [end.line.wall.id, nearest.wall.id].sort(),
    at: target,
    length: distance(end.at, target),
  });
  moveEnd(end, target);
}

/** Where the line of the end crosses the other wall; the nearest point of that wall when it runs beside it. */
function crossingNear(end: LooseEnd, other: CentreLine): XY {
  const foot = nearestOnSegment(end.at, other.a, other.b);
  const { a, b } = end.line;
  const dx = b[0] - a[0];
  const dy = b[1] - a[1];
  const ox = other.b[0] - other.a[0];
  const oy = other.b[1] - other.a[1];
  const denominator = dx * oy - dy * ox;
  if (Math.abs(denominator) < 1e-3 * Math.hypot(dx, dy) * Math.hypot(ox, oy)) return foot;
  const t = ((other.a[0] - a[0]) * oy - (other.a[1] - a[1]) * ox) / denominator;
  const target: XY = [a[0] + dx * t, a[1] + dy * t];
  if (distance(target, end.at) > 2 * SNAP) return foot;
  const onOther = nearestOnSegment(target, other.a, other.b);
  return distance(target, onOther) <= TOUCH ? target : onOther;
}

function moveEnd({ line, end }: LooseEnd, to: XY): void {
  line[end] = to;
}

function widestGap(group: readonly LooseEnd[]): Mm {
  let widest = 0;
  for (const one of group) for (const other of group) widest = Math.max(widest, distance(one.at, other.at));
  return widest;
}
