import type { Mm, Wall } from '../plan/model.ts';
import { comparePoints, distance } from '../plane/point.ts';
import { joinsOf } from './gap-joins.ts';
import { NODE_TOLERANCE } from './tolerances.ts';
import type { CenterLine, Notice } from './types.ts';

/**
 * A shorter wall has no direction, mm: its ends may merge into one node. Ten times the node tolerance, a distance that
 * chained merging does not reach by chance.
 */
const SHORTEST_WALL: Mm = 10 * NODE_TOLERANCE;

/**
 * Returns the center-lines of the walls as drawn, then the pieces that connect ends to the walls they nearly meet
 * (`gap-joins.ts`), in an order and direction that do not depend on the file. Every closed gap and every wall without
 * length yields a notice.
 */
export function joinedCenterLines(walls: readonly Wall[]): { lines: CenterLine[]; notices: Notice[] } {
  const notices: Notice[] = [];
  const drawn: CenterLine[] = [];
  for (const wall of walls) {
    if (distance(wall.from, wall.to) > SHORTEST_WALL)
      drawn.push(ordered({ wall, a: wall.from, b: wall.to, isDrawn: true, isInLine: true }));
    else notices.push({ kind: 'zero-length-wall', ids: [wall.id], at: wall.from, length: 0 });
  }
  drawn.sort(compareLines);
  const { joins, notices: joined } = joinsOf(drawn);
  return { lines: [...drawn, ...joins.map(ordered).sort(compareLines)], notices: [...notices, ...joined] };
}

function ordered(line: CenterLine): CenterLine {
  return comparePoints(line.a, line.b) <= 0 ? line : { ...line, a: line.b, b: line.a };
}

function compareLines(s: CenterLine, t: CenterLine): number {
  return comparePoints(s.a, t.a) || comparePoints(s.b, t.b) || (s.wall.id < t.wall.id ? -1 : 1);
}
