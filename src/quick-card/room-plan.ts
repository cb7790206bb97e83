import type { Side } from '../../geometry/dimension/wall-gaps.ts';
import { wallsAroundOutline } from '../../geometry/edit/wall-run.ts';
import type { Fixture, Level, Mm, Protocol, Shape, Wall, XY } from '../../geometry/plan/model.ts';
import { effectiveRules } from '../../geometry/rules/profiles.ts';
import type { RuleId } from '../../geometry/rules/types.ts';
import { FIXTURE_DEFAULTS, usualHeights, WALL_THICKNESS } from '../state/defaults.ts';
import { type CardAnswers, FAR, type GroupId, SQUARES, type Thing } from './answers.ts';
import { THINGS } from './things.ts';

/** The room of a card as walls and fixtures. The upper left corner of its floor is at (0, 0); the far wall is at the top of the page. */

/** The four walls in the order in which `wallsAroundOutline` returns them. */
const WALL_SIDES = ['up', 'right', 'down', 'left'] as const satisfies readonly Side[];

/**
 * Depth of a thing drawn behind a wall, and distance of a "far away" thing from the room, mm. The nearest face decides, so that a thing
 * that is deeper or farther away is never nearer than drawn. 10 ft is the greatest distance of the published rules.
 */
const BEHIND: Mm = 914.4;
const FAR_AWAY: Mm = 3048;

/** Inside lengths of the room, mm. */
export interface RoomSize {
  readonly across: Mm;
  readonly along: Mm;
}

/** Returns the inside lengths of the room; null while one is missing. */
export function sizeOf({ across, along }: CardAnswers): RoomSize | null {
  return across === null || along === null ? null : { across, along };
}

export const wallId = (side: Side): string => `w${WALL_SIDES.indexOf(side) + 1}`;

/** Whether a wall has another room behind it. A wall with a window or an outside door is an outside wall, regardless of the answer. */
function isInside({ inside, things }: CardAnswers, side: Side): boolean {
  const opens = ({ kind, square }: Thing) => THINGS[kind].fixture === null && sideOfSquare(square) === side;
  return inside.includes(side) && !things.some(opens);
}

const thicknessOf = (answers: CardAnswers, side: Side): Mm =>
  isInside(answers, side) ? WALL_THICKNESS.partition : WALL_THICKNESS.outer;

/** Returns the four walls around a floor, with the usual thickness of an outside wall or of a partition. */
export function roomWalls(answers: CardAnswers, { across, along }: RoomSize): readonly Wall[] {
  const floor: readonly XY[] = [
    [0, 0],
    [across, 0],
    [across, along],
    [0, along],
  ];
  const lines = (side: Side) => wallsAroundOutline(floor, thicknessOf(answers, side));
  const [top, right, bottom, left] = WALL_SIDES.map((side, k) => lines(side)[k]?.[0] ?? [0, 0]) as [XY, XY, XY, XY];
  const [x0, x1, y0, y1] = [left[0], right[0], top[1], bottom[1]];
  const corners: readonly XY[] = [
    [x0, y0],
    [x1, y0],
    [x1, y1],
    [x0, y1],
  ];
  return WALL_SIDES.map((side, k) => ({
    id: wallId(side),
    from: corners[k] as XY,
    to: corners[(k + 1) % 4] as XY,
    thickness: thicknessOf(answers, side),
    side: isInside(answers, side) ? 'inside' : 'auto',
  }));
}

/** Returns column and row of a square of the picture; -1 and `SQUARES` are the walls. */
export function squareAt(square: string): XY {
  const [x = 0, y = 0] = square.split(',').map(Number);
  return [x, y];
}

/** Returns the wall that a square of the border represents; null for the floor, the corners and `FAR`. */
export function sideOfSquare(square: string): Side | null {
  if (square === FAR) return null;
  const [x, y] = squareAt(square);
  const [inX, inY] = [x >= 0 && x < SQUARES, y >= 0 && y < SQUARES];
  if (inX === inY) return null;
  if (inX) return y < 0 ? 'up' : 'down';
  return x < 0 ? 'left' : 'right';
}

const isOnFloor = (square: string): boolean => squareAt(square).every((k) => k >= 0 && k < SQUARES);

/** Returns whether a thing can be at its square: openings are in walls or far away, other things also on the floor. */
export function isPlace({ kind, square }: Thing): boolean {
  if (square === FAR || sideOfSquare(square)) return true;
  return THINGS[kind].fixture !== null && isOnFloor(square);
}

/** Returns the groups with a drawn thing. */
export function groupsDrawn({ things }: CardAnswers): ReadonlySet<GroupId> {
  return new Set(things.filter(isPlace).map(({ kind }) => THINGS[kind].group));
}

/** Returns the fixtures, each as large as its square, so that the nearest edge of the square counts. */
export function roomFixtures(
  answers: CardAnswers,
  size: RoomSize,
  { ceiling }: Level,
  protocol: Protocol,
): readonly Fixture[] {
  return answers.things
    .filter(isPlace)
    .flatMap((thing): Omit<Fixture, 'id'>[] => {
      const { fixture: kind, name, group } = THINGS[thing.kind];
      if (kind === null) return [];
      const isFar = thing.square === FAR;
      const shapes = isFar ? farAreas(answers, size, leastOf(protocol, group)) : [areaOf(answers, thing.square, size)];
      return shapes.map((shape) => ({
        kind,
        name: `${name}${isFar ? ' (10 ft or more away)' : ''}`,
        shape,
        ...usualHeights(FIXTURE_DEFAULTS[kind], ceiling),
        stream: null,
      }));
    })
    .map((fixture, index) => ({ ...fixture, id: `f${index + 1}` }));
}

/** Returns the distance of a rule, mm; zero for a rule without one. */
export function leastOf(protocol: Protocol, rule: RuleId): Mm {
  return effectiveRules(protocol).find(({ id }) => id === rule)?.least ?? 0;
}

/**
 * Returns the area of a square: on the floor the square itself, at the border the wall and the strip behind it. It begins at the face of
 * the wall, because the answer does not say whether the thing is in the wall or behind it.
 */
export function areaOf(answers: CardAnswers, square: string, { across, along }: RoomSize): Shape {
  const [dx, dy] = [across / SQUARES, along / SQUARES];
  const [x, y] = squareAt(square);
  const side = sideOfSquare(square);
  const center: XY = [(x + 0.5) * dx, (y + 0.5) * dy];
  if (!side) return box(center, dx, dy);
  const deep = thicknessOf(answers, side) + BEHIND;
  return side === 'up' || side === 'down'
    ? box([center[0], side === 'up' ? -deep / 2 : along + deep / 2], dx, deep)
    : box([side === 'left' ? -deep / 2 : across + deep / 2, center[1]], deep, dy);
}

/**
 * Returns the areas of a far thing, 10 ft from the floor of the room: beyond the first wall that has a room behind it, as wide as that wall.
 * Where a rule asks for more than 10 ft, beyond every wall, because the answer does not say on which side it is.
 * @param least distance that its rule needs, mm
 */
export function farAreas(answers: CardAnswers, { across, along }: RoomSize, least: Mm): readonly Shape[] {
  const one = WALL_SIDES.find((side) => isInside(answers, side)) ?? 'up';
  const out = FAR_AWAY + BEHIND / 2;
  return (least > FAR_AWAY ? WALL_SIDES : [one]).map((side) => {
    if (side === 'up') return box([across / 2, -out], across, BEHIND);
    if (side === 'down') return box([across / 2, along + out], across, BEHIND);
    return box([side === 'left' ? -out : across + out, along / 2], BEHIND, along);
  });
}

function box(center: XY, width: Mm, depth: Mm): Shape {
  return { box: { center, width, depth, turn: 0 } };
}
