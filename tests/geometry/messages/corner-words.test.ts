import { describe, expect, it } from 'vitest';
import { facingOf, tapedOffsets } from '../../../geometry/dimension/opening-offsets.ts';
import { buildLevel } from '../../../geometry/level/build-level.ts';
import { cornerWords } from '../../../geometry/messages/index.ts';
import type { Wall, XY } from '../../../geometry/plan/model.ts';
import { boxWalls, levelOf, wall } from '../../helpers/level-of.ts';

const OPENING = { offset: 1000, width: 800 };
const walls = boxWalls(0, 0, 5000, 3000);
const turned = ({ from, to, ...rest }: Wall): Wall => ({ ...rest, from: to, to: from });

/** Returns the corner that is called left by a person in the middle of the room who faces the wall. */
function leftCorner(of: Wall): XY {
  const level = levelOf({ walls: walls.map((each) => (each.id === of.id ? of : each)) });
  const model = buildLevel(level);
  const words = cornerWords([of.from, of.to], facingOf(model, of, OPENING));
  expect([words.from.seen, words.to.seen]).toEqual(['facing the wall', 'facing the wall']);
  expect([words.from.name, words.to.name].sort()).toEqual(['left', 'right']);
  const [taped] = tapedOffsets(model, of, OPENING);
  // The taped line begins at the corner with that name.
  const begin = words.from.name === 'left' ? of.from : of.to;
  expect(Math.hypot((taped?.lines.left[0][0] ?? 0) - begin[0], (taped?.lines.left[0][1] ?? 0) - begin[1])).toBeLessThan(
    100,
  );
  return begin;
}

describe('cornerWords: which corner is on the left', () => {
  // Seen from the middle of the room, facing the wall; y is down the page.
  it.each([
    ['upper', 0, [0, 0]],
    ['right', 1, [5000, 0]],
    ['lower', 2, [5000, 3000]],
    ['left', 3, [0, 3000]],
  ] as const)('of the %s wall, whichever way it was drawn', (_, index, left) => {
    const of = walls[index] as Wall;
    expect(leftCorner(of)).toEqual(left);
    expect(leftCorner(turned(of))).toEqual(left);
  });

  it('is that of the page where rooms are on both sides of the wall, or on neither', () => {
    const between = wall('p', [2000, 0], [2000, 3000]);
    const parted = buildLevel(levelOf({ walls: [...walls, between] }));
    expect(facingOf(parted, between, OPENING)).toBeNull();
    expect(cornerWords([between.from, between.to], null)).toEqual({
      from: { name: 'upper', seen: 'on the page' },
      to: { name: 'lower', seen: 'on the page' },
    });
    const alone = wall('w', [5000, 0], [0, 0]);
    expect(facingOf(buildLevel(levelOf({ walls: [alone] })), alone, OPENING)).toBeNull();
    expect(cornerWords([alone.from, alone.to], null).from.name).toBe('right');
  });
});
