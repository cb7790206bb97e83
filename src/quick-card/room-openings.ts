import { unmeasuredHeights } from '../../geometry/edit/index.ts';
import type { Opening, Protocol, Shape, Wall } from '../../geometry/plan/model.ts';
import { shapeBody } from '../../geometry/plane/body.ts';
import { distance } from '../../geometry/plane/point.ts';
import { OPENING_DEFAULTS, WALL_THICKNESS } from '../state/defaults.ts';
import { type CardAnswers, FAR, SQUARES } from './answers.ts';
import { farAreas, leastOf, type RoomSize, sideOfSquare, squareAt, wallId } from './room-plan.ts';
import { THINGS } from './things.ts';

/** The windows and outside doors of a card's room. */

/** Returns the openings: adjacent squares of one kind are one opening. */
export function roomOpenings({ things }: CardAnswers, walls: readonly Wall[], size: RoomSize): readonly Opening[] {
  const found: Opening[] = [];
  for (const wall of walls) {
    for (const kind of ['window', 'outside-door'] as const) {
      const isHere = (square: string, side = sideOfSquare(square)) => side !== null && wallId(side) === wall.id;
      const squares = things.filter((one) => one.kind === kind && isHere(one.square));
      const at = squares.map(({ square }) => alongWall(square));
      for (const [first, last] of runsOf(at)) found.push(openingAt(found.length, wall, kind, first, last, size));
    }
  }
  return found;
}

/** Returns outside walls far from the room that a window or door fills; empty if the answers have no far opening. */
export function farOpenings(
  answers: CardAnswers,
  size: RoomSize,
  protocol: Protocol,
): readonly { readonly wall: Wall; readonly opening: Opening }[] {
  const far = answers.things.find(({ kind, square }) => square === FAR && THINGS[kind].fixture === null);
  if (!far) return [];
  const kind = far.kind === 'window' ? 'window' : 'door';
  const { bottom, top } = OPENING_DEFAULTS[kind];
  const heights = { bottom, top, ...unmeasuredHeights({ bottom, top }) };
  return farAreas(answers, size, leastOf(protocol, THINGS[far.kind].group)).map((area, k) => {
    const wall = farWall(`w${5 + k}`, area, size);
    const width = distance(wall.from, wall.to);
    return { wall, opening: { id: `o${wall.id}`, wall: wall.id, kind, offset: 0, width, ...heights } };
  });
}

/** Returns the wall along the side of a far area that is toward the room. */
function farWall(id: string, area: Shape, { across, along }: RoomSize): Wall {
  const { minX, maxX, minY, maxY } = shapeBody(area).extent;
  const thickness = WALL_THICKNESS.partition;
  const isLevel = maxX > 0 && minX < across;
  const x = minX < 0 ? maxX - thickness / 2 : minX + thickness / 2;
  const y = minY < 0 ? maxY - thickness / 2 : minY + thickness / 2;
  return {
    id,
    from: isLevel ? [0, y] : [x, 0],
    to: isLevel ? [across, y] : [x, along],
    thickness,
    side: 'outside',
  };
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
