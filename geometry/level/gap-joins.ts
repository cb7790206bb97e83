import type { Mm, XY } from '../plan/model.ts';
import { type FindNear, nearbyOf } from '../plane/nearby.ts';
import { cross, distance, nearestOnSegment, segmentDistance } from '../plane/point.ts';
import { FEWEST_SPOKES, spokesTest } from './spokes.ts';
import { NODE_TOLERANCE, SNAP_DISTANCE } from './tolerances.ts';
import type { CenterLine, Notice } from './types.ts';

/** A crossing closer than this to both ends is the intended corner; farther away, the walls run side by side. */
const CROSSING: Mm = 2 * SNAP_DISTANCE;

/** Where an end nearly meets more walls than this, all walls around it are connected to one hub. */
const HUB_THRESHOLD = 24;

/** An end of a wall and another wall that it nearly meets. */
interface NearMiss {
  readonly line: CenterLine;
  readonly end: XY;
  readonly other: CenterLine;
  readonly gap: Mm;
}

/**
 * Returns short pieces of wall that connect ends to the walls they nearly meet, and notices about them. The drawing
 * itself is not changed. Whether and how two walls are connected depends on these two alone, so that a third wall
 * drawn later cannot undo the connection, even if it leads from one to the other, because it may be thinner. Around hubs,
 * where no real house has so many walls, the other ends of the walls are not joined to each other.
 */
export function joinsOf(lines: readonly CenterLine[]): { joins: CenterLine[]; notices: Notice[] } {
  const joins: CenterLine[] = [];
  const reported: Notice[] = [];
  const { ends, findNear } = surveyEnds(lines);
  const hubEnds = ends.filter(({ misses }) => misses.length > HUB_THRESHOLD);
  joins.push(...joinsToHubs(hubEnds, lines, findNear));
  for (const { misses, crossed, isLoose, line, end } of ends) {
    if (misses.length > HUB_THRESHOLD) continue;
    for (const miss of misses) {
      const crossing = crossingNear(miss);
      const to = crossing ?? nearestOnSegment(end, miss.other.a, miss.other.b);
      if (distance(end, to) > NODE_TOLERANCE) {
        joins.push({ wall: line.wall, a: end, b: to, isDrawn: false, isInLine: crossing !== null });
      }
      if (isLoose) reported.push(noticeOf('gap-closed', line, miss.other, to, miss.gap));
    }
    if (isLoose && misses.length === 0 && crossed) {
      reported.push(noticeOf('overshoot', line, crossed.other, crossed.at, distance(end, crossed.at)));
    }
  }
  return { joins, notices: mergeNotices(reported) };
}

/** Connects every wall within an inch of a hub to the hub. This replaces the pairwise connections. */
function joinsToHubs(hubEnds: readonly SurveyedEnd[], lines: readonly CenterLine[], findNear: FindNear): CenterLine[] {
  const hubs: XY[] = [];
  for (const { end } of hubEnds) if (!hubs.some((hub) => distance(hub, end) <= SNAP_DISTANCE)) hubs.push(end);
  return hubs.flatMap((hub) => {
    return findNear([hub], CROSSING).flatMap((i): CenterLine[] => {
      const { wall, a, b } = lines[i] as CenterLine;
      const from = nearestOnSegment(hub, a, b);
      const gap = distance(from, hub);
      if (gap <= NODE_TOLERANCE || gap > CROSSING) return [];
      return [{ wall, a: from, b: hub, isDrawn: false, isInLine: true, hub }];
    });
  });
}

interface SurveyedEnd {
  readonly line: CenterLine;
  readonly end: XY;
  /** The list stops just above the hub threshold. */
  readonly misses: readonly NearMiss[];
  /** Whether the end touches no other wall. */
  readonly isLoose: boolean;
  /** The wall that the end slightly overshoots. */
  readonly crossed: { readonly other: CenterLine; readonly at: XY } | null;
}

function surveyEnds(lines: readonly CenterLine[]): { ends: SurveyedEnd[]; findNear: FindNear } {
  const findNear = nearbyOf(lines.map(({ a, b }) => [a, b]));
  const near: (readonly [line: CenterLine, end: XY, found: readonly number[]])[] = [];
  let most = 0;
  for (const line of lines) {
    for (const end of [line.a, line.b]) {
      const found = findNear([end], SNAP_DISTANCE);
      // The end's own wall is always near.
      if (found.length > 1) near.push([line, end, found]);
      most = Math.max(most, found.length);
    }
  }
  const areSpokes = most < FEWEST_SPOKES ? () => false : spokesTest(lines);
  const ends = near.map(([line, end, found]) => surveyEnd(line, end, found, lines, areSpokes));
  return { ends, findNear };
}

function surveyEnd(
  line: CenterLine,
  end: XY,
  near: readonly number[],
  lines: readonly CenterLine[],
  areSpokes: (line: CenterLine, end: XY, other: CenterLine) => boolean,
): SurveyedEnd {
  const far = end === line.a ? line.b : line.a;
  const misses: NearMiss[] = [];
  let isLoose = true;
  let crossed: SurveyedEnd['crossed'] = null;
  for (const i of near) {
    const other = lines[i] as CenterLine;
    if (other === line) continue;
    const gap = segmentDistance(end, other.a, other.b);
    if (gap <= NODE_TOLERANCE) isLoose = false;
    if (gap <= NODE_TOLERANCE || gap > SNAP_DISTANCE || areSpokes(line, end, other)) continue;
    const at = meetingNearEnd(end, far, other);
    if (!at) {
      misses.push({ line, end, other, gap });
      if (misses.length > HUB_THRESHOLD) break;
    } else if (cross(other.a, other.b, far) * cross(other.a, other.b, end) < 0 && distance(at, far) > NODE_TOLERANCE) {
      crossed = { other, at };
    }
  }
  return { line, end, misses, isLoose, crossed };
}

/** Returns where the other wall meets the last inch of this one; null if it does not. */
function meetingNearEnd(end: XY, far: XY, other: CenterLine): XY | null {
  const length = distance(end, far);
  const reach = Math.min(1, CROSSING / length);
  const tail: XY = [end[0] + (far[0] - end[0]) * reach, end[1] + (far[1] - end[1]) * reach];
  const at = crossingOf(end, tail, other.a, other.b);
  if (at && segmentDistance(at, end, tail) <= NODE_TOLERANCE && segmentDistance(at, other.a, other.b) <= NODE_TOLERANCE)
    return at;
  for (const tip of [other.a, other.b]) if (segmentDistance(tip, end, tail) <= NODE_TOLERANCE) return tip;
  return segmentDistance(tail, other.a, other.b) <= NODE_TOLERANCE ? tail : null;
}

/**
 * Returns where the line of the end crosses the other wall, or its extension at the near end; null when they are
 * parallel.
 */
function crossingNear({ line, end, other }: NearMiss): XY | null {
  const at = crossingOf(line.a, line.b, other.a, other.b);
  if (at && distance(at, end) <= CROSSING) {
    if (segmentDistance(at, other.a, other.b) <= NODE_TOLERANCE) return at;
    const tip = distance(end, other.a) <= distance(end, other.b) ? other.a : other.b;
    if (distance(end, tip) <= SNAP_DISTANCE && distance(at, tip) <= CROSSING) return at;
  }
  return null;
}

/** Returns where two infinite lines cross; null when they are parallel. */
function crossingOf(a: XY, b: XY, c: XY, d: XY): XY | null {
  const dx = b[0] - a[0];
  const dy = b[1] - a[1];
  const ex = d[0] - c[0];
  const ey = d[1] - c[1];
  const denominator = dx * ey - dy * ex;
  if (Math.abs(denominator) < 1e-3 * Math.hypot(dx, dy) * Math.hypot(ex, ey)) return null;
  const t = ((c[0] - a[0]) * ey - (c[1] - a[1]) * ex) / denominator;
  return [a[0] + dx * t, a[1] + dy * t];
}

function noticeOf(kind: 'gap-closed' | 'overshoot', line: CenterLine, other: CenterLine, at: XY, length: Mm): Notice {
  return { kind, ids: [...new Set([line.wall.id, other.wall.id])].sort(), at, length };
}

/** Merges the notices about one place: the two ends of a corner, or three that nearly meet. */
function mergeNotices(notices: readonly Notice[]): Notice[] {
  const merged: Notice[] = [];
  for (const notice of notices) {
    const k = merged.findIndex(
      ({ kind, ids, at }) =>
        kind === notice.kind && distance(at, notice.at) <= CROSSING && ids.some((id) => notice.ids.includes(id)),
    );
    const before = merged[k];
    if (!before) merged.push(notice);
    else {
      const ids = [...new Set([...before.ids, ...notice.ids])].sort();
      merged[k] = { ...before, ids, length: Math.max(before.length ?? 0, notice.length ?? 0) };
    }
  }
  return merged;
}
