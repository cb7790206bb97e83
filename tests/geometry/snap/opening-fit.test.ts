import { describe, expect, it } from 'vitest';
import { buildLevel } from '../../../geometry/level/build-level.ts';
import type { Opening, Wall } from '../../../geometry/plan/model.ts';
import { distance } from '../../../geometry/plane/point.ts';
import { cornerLines, fitOpening, openingMisfit, wallAt } from '../../../geometry/snap/opening-fit.ts';
import { doorSwing } from '../../../geometry/snap/opening-symbol.ts';
import { boxWalls, levelOf, wall } from '../../helpers/level-of.ts';

const window1: Opening = { id: 'o1', wall: 'w1', kind: 'window', offset: 1000, width: 800, bottom: 1200, top: 2000 };
const level = levelOf({ walls: boxWalls(0, 0, 6000, 4000, 200), openings: [window1] });
const top = level.walls[0] as Wall;

describe('wallAt', () => {
  it('finds the wall by its body and says how far along', () => {
    expect(wallAt(level, [2000, 120], 30)).toMatchObject({ wall: { id: 'w1' }, along: 2000 });
    expect(wallAt(level, [2000, 131], 30)).toBeNull();
  });
});

describe('fitOpening', () => {
  it.each([
    { name: 'where it is wanted', middle: 3000, width: 800, step: null, offset: 2600 },
    { name: 'by whole steps', middle: 3003, width: 800, step: 50, offset: 2600 },
    { name: 'moved in from the near end', middle: 100, width: 800, step: null, offset: 0 },
    { name: 'moved in from the far end', middle: 5990, width: 800, step: null, offset: 5200 },
  ])('$name', ({ middle, width, step, offset }) => {
    expect(fitOpening(levelOf({ walls: level.walls }), top, middle, width, step)).toEqual({ offset, misfit: null });
  });

  it('refuses a place over another opening and says by how much', () => {
    expect(fitOpening(level, top, 2000, 800, null).misfit).toEqual({ kind: 'over-another', other: window1, by: 200 });
    expect(fitOpening(level, top, 2200, 800, null).misfit).toBeNull(); // jamb to jamb
  });

  it('lets a moved opening lie over its own old place', () => {
    expect(fitOpening(level, top, 1500, 800, null, 'o1').misfit).toBeNull();
  });

  it('refuses a wall that is too short', () => {
    const short = wall('s', [0, 0], [700, 0]);
    expect(fitOpening(level, short, 350, 800, null).misfit).toEqual({ kind: 'wall-too-short', wall: 700, needs: 800 });
  });
});

describe('openingMisfit', () => {
  it('names how far an opening reaches past the end of its wall', () => {
    expect(openingMisfit(level, { ...window1, offset: 5300 })).toEqual({
      kind: 'wall-too-short',
      wall: 6000,
      needs: 6100,
    });
    expect(openingMisfit(level, window1)).toBeNull();
  });
});

describe('cornerLines', () => {
  it('measures to the corners of the room, not to the ends of the center-line', () => {
    const lines = cornerLines(buildLevel(level), top, 1000, 800, [1400, 500]);
    // The inside of the room is from 100 to 5900.
    expect(lines.map((line) => distance(...line))).toEqual([900, 4100]);
  });

  it('measures to the ends of the wall where no room lies there', () => {
    const lines = cornerLines(buildLevel(level), top, 1000, 800, [1400, -500]);
    expect(lines.map((line) => distance(...line))).toEqual([1000, 4200]);
  });
});

describe('doorSwing', () => {
  const door: Opening = { ...window1, id: 'o2', kind: 'door', bottom: 0 };

  it.each([
    { wall: 'w1', into: [1000, 900], hinge: [1000, 100] }, // top wall: downward
    { wall: 'w3', into: [5000, 3100], hinge: [5000, 3900] }, // bottom wall, drawn right to left: upward
  ])('of a door in $wall opens into the room', ({ wall: id, into, hinge }) => {
    const swing = doorSwing(buildLevel(levelOf({ walls: level.walls, openings: [{ ...door, wall: id }] })), 'o2');
    expect(swing?.hinge).toEqual(hinge);
    expect(swing?.open).toEqual(into);
    // The arc runs from the closed leaf to the open one.
    const end = (swing?.start ?? 0) + (swing?.sweep ?? 0);
    expect(Math.cos(end)).toBeCloseTo(((into[0] as number) - (hinge[0] as number)) / 800, 9);
    expect(Math.sin(end)).toBeCloseTo(((into[1] as number) - (hinge[1] as number)) / 800, 9);
  });
});
