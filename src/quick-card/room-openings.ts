import { unmeasuredHeights } from '../../geometry/edit/index.ts';
import type { Opening, Wall } from '../../geometry/plan/model.ts';
import { shapeBody, shapeMiddle } from '../../geometry/plane/body.ts';
import { distance } from '../../geometry/plane/point.ts';
import { OPENING_DEFAULTS, WALL_THICKNESS } from '../state/defaults.ts';
import { type CardAnswers, FAR, SQUARES } from './answers.ts';
import { areaOf, isPlace, type RoomSize, sideOfSquare, squareAt, wallId } from './room-plan.ts';
import { THINGS } from './things.ts';

/** The windows and outside doors of a card's room. */

/** Returns the openings: adjacent squares of one kind are one opening. */
export function roomOpenings({ things }: CardAnswers, walls: readonly Wall[], size: RoomSize): readonly Opening[] {
  const found: Opening[] = [];
  for (const wall of walls) {
    for (const kind of ['window', 'outside-door'] as const) {
      const squares = things.filter((one) => one.kind === kind && wallId(sideOfSquare(one.square) ?? 'up') === wall.id);
      const at = squares.filter(isPlace).map(({ square }) => alongWall(square));
      for (const [first, last] of runsOf(at)) found.push(openingAt(found.length, wall, kind, first, last, size));
    }
  }
  return found;
}

/** Returns an outside wall far from the room that a window or door fills; null if the answers have no far opening. */
export function farOpening(
  answers: CardAnswers,
  size: RoomSize,
): { readonly wall: Wall; readonly opening: Opening } | null {
  const far = answers.things.find(({ kind, square }) => square === FAR && THINGS[kind].fixture === null);
  if (!far) return null;
  const area = areaOf(answers, FAR, size);
  const { extent } = shapeBody(area);
  const middle = shapeMiddle(area);
  const isLevel = extent.maxX - extent.minX > extent.maxY - extent.minY;
  const wall: Wall = {
    id: 'w5',
    from: isLevel ? [extent.minX, middle[1]] : [middle[0], extent.minY],
    to: isLevel ? [extent.maxX, middle[1]] : [middle[0], extent.maxY],
    thickness: WALL_THICKNESS.partition,
    side: 'outside',
  };
  const sort = far.kind === 'window' ? 'window' : 'door';
  const { bottom, top } = OPENING_DEFAULTS[sort];
  const width = distance(wall.from, wall.to);
  const heights = { bottom, top };
  const opening = {
    id: 'o0',
    wall: wall.id,
    kind: sort,
    offset: 0,
    width,
    ...heights,
    ...unmeasuredHeights(heights),
  } as const;
  return { wall, opening };
}

/** The index of a square along its wall, from the left or from the top of the page. */
function alongWall(square: string): number {
  const [x, y] = squareAt(square);
  return x >= 0 && x < SQUARES ? x : y;
}

function runsOf(numbers: readonly number[]): readonly (readonly [first: number, last: number])[] {
  const runs: [number, number][] = [];
  for (const k of [...new Set(numbers)].sort((a, b) => a - b)) {
    const last = runs.at(-1);
    if (last && last[1] === k - 1) last[1] = k;
    else runs.push([k, k]);
  }
  return runs;
}

function openingAt(
  index: number,
  wall: Wall,
  kind: 'window' | 'outside-door',
  first: number,
  last: number,
  { across, along }: RoomSize,
): Opening {
  const isLevel = wall.from[1] === wall.to[1];
  const step = (isLevel ? across : along) / SQUARES;
  const [near, width] = [first * step, (last - first + 1) * step];
  // The lines of the far and the right wall run right and down the page, the other two in the opposite direction.
  const start = isLevel ? wall.from[0] : wall.from[1];
  const runsWithPage = wall.id === wallId('up') || wall.id === wallId('right');
  const offset = runsWithPage ? near - start : start - near - width;
  const sort = kind === 'window' ? 'window' : 'door';
  const { bottom, top } = OPENING_DEFAULTS[sort];
  return {
    id: `o${index + 1}`,
    wall: wall.id,
    kind: sort,
    offset,
    width: Math.min(width, distance(wall.from, wall.to) - offset),
    bottom,
    top,
    ...unmeasuredHeights({ bottom, top }),
  };
}
