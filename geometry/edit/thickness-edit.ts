import { HALVES_BEYOND, type TapedBy } from '../dimension/taped-by.ts';
import { buildLevel } from '../level/build-level.ts';
import type { LevelModel, Notice, Room } from '../level/types.ts';
import type { StaysAt, ThicknessChange } from '../messages/thickness-changed.ts';
import type { Level, Mm, Plan, Wall, XY } from '../plan/model.ts';
import { along, distance, plus, scaled } from '../plane/point.ts';
import { ringsContain } from '../plane/ring.ts';
import { withItemPatched } from './listed-items.ts';
import { withLinesShifted } from './slide-walls.ts';
import { impossibleWalls } from './wall-edit.ts';

/** Changes the thickness of existing walls. A tape measures faces, so the face that was taped stays, and the center-line moves. */

type Unit = Plan['display']['length'];

export interface ThicknessEdit {
  readonly level: Level;
  /** For each changed wall what stays, and how much thicker it is, in the order of the level's walls. */
  readonly changes: readonly ThicknessChange[];
}

/**
 * Returns the level with the given walls `thickness` mm thick. Where lengths are taped inside, the face toward the room stays; where they are
 * taped outside, the other face. The center-line stays where lengths are taped between center-lines, and where the taped face cannot be
 * known. Ends of all walls that are joined slide along their own lines, so that no other face moves; openings and other items keep their
 * position on the page. A wall that cannot be moved in this way keeps its center-line.
 */
export function wallsThick(
  model: LevelModel,
  ids: readonly string[],
  thickness: Mm,
  by: TapedBy,
  unit: Unit,
): ThicknessEdit {
  const concerned = model.level.walls.filter(({ id }) => ids.includes(id));
  const shifts: Shift[] = [];
  const stays = new Map<string, StaysAt>();
  for (const wall of concerned) {
    const found = by === 'center' ? 'center' : roomBeside(model, wall);
    stays.set(wall.id, typeof found === 'string' ? found : by);
    if (typeof found === 'string' || thickness === wall.thickness) continue;
    const more = thickness - wall.thickness;
    const move = scaled(rightOf(wall), (HALVES_BEYOND[by] * found.side * more) / 2);
    shifts.push({ id: wall.id, thickness, more, by: move, cavities: found.cavities, isInside: by === 'inside' });
  }
  const { level, left } = shiftedAsFarAsCan(model, shifts, unit);
  for (const { id } of left) stays.set(id, 'joined');
  return {
    level: withThickness(level, ids, thickness),
    changes: concerned.map(({ id, thickness: was }) => ({ stays: stays.get(id) as StaysAt, more: thickness - was })),
  };
}

const withThickness = (level: Level, ids: readonly string[], thickness: Mm): Level =>
  ids.reduce((now, id) => withItemPatched(now, id, { thickness }), level);

/** A wall whose center-line moves. */
interface Shift {
  readonly id: string;
  readonly thickness: Mm;
  readonly by: XY;
  /** How much thicker the wall becomes, mm. */
  readonly more: Mm;
  /** Cavities behind the wall, which nobody tapes. */
  readonly cavities: readonly Room[];
  /** Whether the face toward the rooms is the one that stays. */
  readonly isInside: boolean;
}

/** Shifts all walls if that is possible, else as many as possible; returns those that cannot be shifted. */
function shiftedAsFarAsCan(
  model: LevelModel,
  shifts: readonly Shift[],
  unit: Unit,
): { readonly level: Level; readonly left: readonly Shift[] } {
  let { level } = model;
  let done: readonly Shift[] = [];
  const left: Shift[] = [];
  const add = (more: readonly Shift[]) => {
    if (more.length === 0) return;
    const all = [...done, ...more];
    const next = possible(model, all, unit);
    if (next) {
      level = next;
      done = all;
    } else if (more.length > 1) {
      const half = Math.ceil(more.length / 2);
      add(more.slice(0, half));
      add(more.slice(half));
    } else left.push(...more);
  };
  add(shifts);
  return { level, left };
}

/**
 * Returns the level with these walls shifted; null where a wall would fold or come loose, a room would open or be divided, or the floor
 * of a room would no longer be as taped.
 */
function possible(model: LevelModel, shifts: readonly Shift[], unit: Unit): Level | null {
  const thick = shifts.reduce((level, { id, thickness }) => withThickness(level, [id], thickness), model.level);
  const next = withLinesShifted(thick, new Map(shifts.map(({ id, by }) => [id, by])));
  if (!next || impossibleWalls(model, next, unit)) return null;
  const { notices, rooms } = buildLevel(next);
  const told = new Set(model.notices.map(noticeKey));
  if (notices.some((notice) => LOOSE.has(notice.kind) && !told.has(noticeKey(notice)))) return null;
  const cavities = new Set(shifts.flatMap(({ cavities }) => cavities));
  const change = changeOf(shifts);
  return model.rooms.every((room) => cavities.has(room) || isAsTaped(room, rooms, change)) ? next : null;
}

/** Returns how floors may change: empty where inside faces stay, else smaller (−1), larger (1), or both where walls differ. */
function changeOf(shifts: readonly Shift[]): readonly (1 | -1)[] {
  return [...new Set(shifts.filter(({ isInside }) => !isInside).map(({ more }) => (more > 0 ? -1 : 1)))];
}

const LOOSE: ReadonlySet<Notice['kind']> = new Set(['gap-closed', 'gap-open', 'overshoot', 'zero-length-wall']);
const noticeKey = ({ kind, ids }: Notice): string => [kind, ...ids].join(' ');

/** Tolerance for floors, mm²: where walls of different thickness meet at a slant, the square end of the thicker one shows, 4 cm by 10 cm. */
const IN_A_CORNER = 2000;

function isAsTaped(room: Room, after: readonly Room[], ways: readonly (1 | -1)[]): boolean {
  // A thicker wall may cover the label point of the old room; then the label point of the new room is in the old floor.
  const now =
    after.find(({ floorRings }) => ringsContain(floorRings, room.labelPoint)) ??
    after.find(({ labelPoint }) => ringsContain(room.floorRings, labelPoint));
  if (!now) return false;
  const more = now.floorArea - room.floorArea;
  return Math.abs(more) <= IN_A_CORNER || ways.some((way) => way * more > 0);
}

/** A room is looked up this far beside a center-line, mm. */
const BESIDE: Mm = 1;

/**
 * Returns the side of a wall on which its rooms are: 1 for the right side, seen along the wall on screen. The taped face cannot be known if a
 * part of the wall has rooms on both sides, if no part has a room, or if the side differs between parts.
 */
function roomBeside(
  model: LevelModel,
  wall: Wall,
): { readonly side: 1 | -1; readonly cavities: readonly Room[] } | 'partition' | 'no-room' {
  const right = scaled(rightOf(wall), BESIDE);
  const sides = new Set<1 | -1>();
  const cavities = new Set<Room>();
  for (const piece of model.pieces) {
    if (piece.wall.id !== wall.id) continue;
    const middle = along(piece.from, piece.to, 0.5);
    const [a, b] = [roomAt(model.rooms, plus(middle, right)), roomAt(model.rooms, plus(middle, scaled(right, -1)))];
    const lies = a && b && piece.outside && wall.side === 'auto' ? awayFromCavity(a, b) : Number(!!a) - Number(!!b);
    if (lies === 0 && a) return 'partition';
    if (lies !== 0) sides.add(lies > 0 ? 1 : -1);
    const behind = lies > 0 ? b : a;
    if (behind) cavities.add(behind);
  }
  const [side, other] = [...sides];
  if (other) return 'partition';
  return side ? { side, cavities: [...cavities] } : 'no-room';
}

/** Returns > 0 if the cavity is on the left, < 0 on the right. Behind the studs of an exterior wall is no room but a cavity: unnamed, or smaller. */
function awayFromCavity(right: Room, left: Room): number {
  return Number(!!right.label) - Number(!!left.label) || right.floorArea - left.floorArea;
}

const roomAt = (rooms: readonly Room[], at: XY): Room | undefined =>
  rooms.find(({ centerRings }) => ringsContain(centerRings, at));

function rightOf(wall: Wall): XY {
  const [ux, uy] = unit(wall);
  return [-uy, ux];
}

function unit({ from, to }: Wall): XY {
  const length = distance(from, to) || 1;
  return [(to[0] - from[0]) / length, (to[1] - from[1]) / length];
}
