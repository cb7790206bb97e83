import { describe, expect, it } from 'vitest';
import { withItemPatched } from '../../../geometry/edit/listed-items.ts';
import { withItemsMoved } from '../../../geometry/edit/move-items.ts';
import { type Handle, handlesOf, withHandleAt, withWallEndAt } from '../../../geometry/edit/reshape.ts';
import { buildLevel } from '../../../geometry/level/build-level.ts';
import type { Box, Fixture, Level, Opening, PlanObject } from '../../../geometry/plan/model.ts';
import { boxWalls, levelOf, wall } from '../../helpers/level-of.ts';

const window1: Opening = { id: 'o1', wall: 'w1', kind: 'window', offset: 1000, width: 800, bottom: 1200, top: 2000 };
const desk = (box: Box): PlanObject => ({ id: 't1', name: 'Desk', shape: { box }, bottom: 0, top: 762 });
const boxOf = (level: Level): Box => {
  const shape = level.objects[0]?.shape;
  if (!shape || !('box' in shape)) throw new Error('not a box');
  return shape.box;
};
const handle = (level: Level, id: string, index: number): Handle => handlesOf(level, id, 300)[index] as Handle;
const areaOf = (level: Level) => buildLevel(level).rooms.map(({ floorArea }) => Math.round(floorArea));

describe('pulling a grip', () => {
  it('of a box leaves the opposite corner where it is', () => {
    const level = levelOf({ objects: [desk({ center: [500, 300], width: 1000, depth: 600, turn: 0 })] });
    // Corners: 0 upper left … 2 lower right.
    const pulled = boxOf(withHandleAt(level, handle(level, 't1', 2), [1500, 1000], null));
    expect(pulled).toEqual({ center: [750, 500], width: 1500, depth: 1000, turn: 0 });
  });

  it('of a turned box works along its own sides', () => {
    const level = levelOf({ objects: [desk({ center: [0, 0], width: 1000, depth: 600, turn: 90 })] });
    // Rotated by a quarter turn, the first corner (−500, −300) is at (300, −500).
    const grip = handle(level, 't1', 0);
    expect(grip.at[0]).toBeCloseTo(300, 9);
    expect(grip.at[1]).toBeCloseTo(-500, 9);
    const pulled = boxOf(withHandleAt(level, grip, [500, -700], null));
    expect(pulled.width).toBeCloseTo(1200, 6);
    expect(pulled.depth).toBeCloseTo(800, 6);
  });

  it('turns a box by whole steps, or freely', () => {
    const level = levelOf({ objects: [desk({ center: [0, 0], width: 1000, depth: 600, turn: 0 })] });
    const grip = handle(level, 't1', 4);
    expect(grip.kind).toBe('turn');
    expect(boxOf(withHandleAt(level, grip, [1000, 60], 15)).turn).toBe(90);
    expect(boxOf(withHandleAt(level, grip, [1000, 1000], null)).turn).toBe(135);
  });

  it.each([0, 30, 200])(
    'that turns a fixture turns its airflow with it, as the command and the field do: from %i°',
    (turn) => {
      const box: Box = { center: [1000, 2000], width: 300, depth: 100, turn };
      const grille: Fixture = {
        id: 'f1',
        kind: 'supply-register',
        name: '',
        shape: { box },
        bottom: 0,
        top: 0,
        stream: { direction: 350, spread: 60, reach: 1500 },
      };
      const level = levelOf({ fixtures: [grille] });
      const grip = handlesOf(level, 'f1', 300).find(({ kind }) => kind === 'turn') as Handle;
      const [x, y] = [
        1000 - Math.sin((turn + 40) * -(Math.PI / 180)) * 500,
        2000 - Math.cos(((turn + 40) * Math.PI) / 180) * 500,
      ];
      const ways = [
        withHandleAt(level, grip, [x, y], null),
        withItemPatched(level, 'f1', { shape: { box: { ...box, turn: (turn + 40) % 360 } } }),
      ].map(({ fixtures: [fixture] }) => [
        fixture && 'box' in fixture.shape && Math.round(fixture.shape.box.turn),
        Math.round(fixture?.stream?.direction ?? Number.NaN),
      ]);
      expect(ways).toEqual(ways.map(() => [(turn + 40) % 360, 30]));
      // An edit that sets the airflow itself does not rotate it again.
      const own = withItemPatched(level, 'f1', {
        shape: { box: { ...box, turn: 90 } },
        stream: { ...grille.stream, direction: 5 },
      });
      expect(own.fixtures[0]?.stream?.direction).toBe(5);
      expect(withItemPatched(level, 'f1', { name: 'X' }).fixtures[0]?.stream).toBe(grille.stream);
    },
  );

  it('at the tip of a stream sets how far it blows and where to, by whole steps or freely', () => {
    const register: Fixture = {
      id: 'f1',
      kind: 'supply-register',
      name: '',
      shape: { box: { center: [1000, 2000], width: 300, depth: 100, turn: 0 } },
      bottom: 0,
      top: 0,
      stream: { direction: 90, spread: 60, reach: 1500 },
    };
    const level = levelOf({ fixtures: [register] });
    const grip = handlesOf(level, 'f1', 300).find(({ kind }) => kind === 'stream') as Handle;
    expect(grip.at[0]).toBeCloseTo(1000, 9);
    expect(grip.at[1]).toBeCloseTo(3500, 9);
    // 1810 mm up the page and 10 to the right.
    expect(withHandleAt(level, grip, [1010, 190], 15, 100).fixtures[0]?.stream).toEqual({
      direction: 270,
      spread: 60,
      reach: 1800,
    });
    const free = withHandleAt(level, grip, [2000, 3000], null).fixtures[0]?.stream;
    expect(free?.direction).toBe(45);
    expect(free?.reach).toBeCloseTo(Math.SQRT2 * 1000, 3);
    expect(withHandleAt(level, grip, [1000, 2000], 15, 100).fixtures[0]?.stream?.reach).toBe(12.7);
  });

  it('makes nothing smaller than half an inch', () => {
    const level = levelOf({ objects: [desk({ center: [500, 300], width: 1000, depth: 600, turn: 0 })] });
    const pulled = boxOf(withHandleAt(level, handle(level, 't1', 2), [-900, -900], null));
    expect([pulled.width, pulled.depth]).toEqual([12.7, 12.7]);
  });

  it('of a jamb leaves the other jamb', () => {
    const level = levelOf({ walls: boxWalls(0, 0, 6000, 4000), openings: [window1] });
    const far = withHandleAt(level, handle(level, 'o1', 1), [2500, 30], null).openings[0];
    expect(far).toMatchObject({ offset: 1000, width: 1500 });
    const near = withHandleAt(level, handle(level, 'o1', 0), [1200, 30], null).openings[0];
    expect(near).toMatchObject({ offset: 1200, width: 600 });
  });

  it('of a wall takes the wall that meets it along, and the room stays closed', () => {
    const level = levelOf({ walls: boxWalls(0, 0, 6000, 4000), openings: [window1] });
    const pulled = withWallEndAt(level, 'w1', 'to', [7000, 0]);
    expect(pulled.walls[1]?.from).toEqual([7000, 0]);
    expect(areaOf(pulled)).toHaveLength(1);
    // The offset of the window is measured from the end that stayed.
    expect(pulled.openings[0]).toMatchObject({ offset: 1000, width: 800 });
  });

  it('of a wall keeps its openings on the page', () => {
    const level = levelOf({ walls: boxWalls(0, 0, 6000, 4000), openings: [window1] });
    const pulled = withWallEndAt(level, 'w1', 'from', [-500, 0]);
    expect(pulled.openings[0]).toMatchObject({ offset: 1500, width: 800 });
  });
});

describe('moving things', () => {
  const level = levelOf({
    walls: [...boxWalls(0, 0, 6000, 4000), wall('w5', [3000, 0], [3000, 4000])],
    openings: [window1],
    objects: [desk({ center: [1500, 2000], width: 1000, depth: 600, turn: 30 })],
  });

  it('a wall takes the ends along that meet it, and those that butt against it', () => {
    const moved = withItemsMoved(level, new Set(['w1']), [0, -500]);
    expect(moved.walls.map(({ from, to }) => [from, to])).toEqual([
      [
        [0, -500],
        [6000, -500],
      ],
      [
        [6000, -500],
        [6000, 4000],
      ],
      [
        [6000, 4000],
        [0, 4000],
      ],
      [
        [0, 4000],
        [0, -500],
      ],
      [
        [3000, -500],
        [3000, 4000],
      ],
    ]);
    // Two rooms of 2900 by 4400 inside.
    expect(areaOf(moved)).toEqual([12_760_000, 12_760_000]);
  });

  it('an opening alone slides along its wall and stops at its ends', () => {
    expect(withItemsMoved(level, new Set(['o1']), [300, 700]).openings[0]?.offset).toBe(1300);
    expect(withItemsMoved(level, new Set(['o1']), [-9000, 0]).openings[0]?.offset).toBe(0);
    expect(withItemsMoved(level, new Set(['o1']), [9000, 0]).openings[0]?.offset).toBe(5200);
  });

  it('an opening goes with its wall', () => {
    expect(withItemsMoved(level, new Set(['w1', 'o1']), [0, -500]).openings[0]?.offset).toBe(1000);
  });

  it('keeps the lists that nothing in has moved: what is derived from them stays valid', () => {
    const moved = withItemsMoved(level, new Set(['t1']), [10, 0]);
    expect(moved.walls).toBe(level.walls);
    expect(moved.detectors).toBe(level.detectors);
    expect(moved.objects).not.toBe(level.objects);
  });
});
