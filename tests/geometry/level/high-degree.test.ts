import { describe, expect, it } from 'vitest';
import { buildLevel } from '../../../geometry/level/build-level.ts';
import { HIGH_DEGREE } from '../../../geometry/level/tolerances.ts';
import type { Wall, XY } from '../../../geometry/plan/model.ts';
import { bodyDistance, ringBody } from '../../../geometry/plane/body.ts';
import { drawn, loop, rectangle, wall } from '../../helpers/drawn.ts';

const HOUSE = loop('h', rectangle(0, 0, 10000, 8000));
const FLOOR = 9800 * 7800;

function copies(count: number, apart: number): Wall[] {
  return Array.from({ length: count }, (_, i) => wall(`s${i}`, [2000, 2000 + i * apart], [8000, 2000 + i * apart]));
}

function star(count: number, middle: XY, reach: number, thickness = 200): Wall[] {
  return Array.from({ length: count }, (_, i) => {
    const angle = (2 * Math.PI * i) / count;
    const tip: XY = [middle[0] + reach * Math.cos(angle), middle[1] + reach * Math.sin(angle)];
    return wall(`s${i}`, middle, tip, { thickness });
  });
}

describe('very many walls', () => {
  it.each([
    ['in one place', 0],
    ['a millionth of a mm apart', 1e-6],
  ])('1,000 %s are one wall for the floor, and told once', (_, apart) => {
    const { rooms, notices } = buildLevel(drawn([...HOUSE, ...copies(1000, apart)]));
    expect(rooms.length).toBe(1);
    // A wall of 6000 × 200 is free-standing in the room; 1,000 steps of 1e-6 mm are 0.001 mm, and the one body that
    // contains all of them is wider by as much on the other side.
    expect(Math.abs((rooms[0]?.floorArea ?? 0) - (FLOOR - 6000 * 200))).toBeLessThan(6000 * 0.0021);
    expect(notices.filter(({ kind }) => kind === 'walls-overlap').map(({ ids }) => ids.length)).toEqual([1000]);
  });

  it('at one point are told, and the ground that their joints could reach counts as wall', () => {
    const middle: XY = [5000, 4000];
    const few = buildLevel(drawn([...HOUSE, ...star(HIGH_DEGREE, middle, 3000)]));
    const many = buildLevel(drawn([...HOUSE, ...star(HIGH_DEGREE + 1, middle, 3000)]));
    expect(few.notices.filter(({ kind }) => kind === 'walls-crowded')).toEqual([]);
    expect(many.notices.filter(({ kind }) => kind === 'walls-crowded').map(({ at, ids }) => [at, ids.length])).toEqual([
      [middle, HIGH_DEGREE + 1],
    ]);
    // Ten half-thicknesses of 100 mm, in any direction.
    for (let degrees = 0; degrees < 360; degrees += 7) {
      const angle = (degrees * Math.PI) / 180;
      const [x, y] = [middle[0] + 999 * Math.cos(angle), middle[1] + 999 * Math.sin(angle)];
      expect(many.joints.some(({ body }) => bodyDistance(ringBody(body), x, y) === 0)).toBe(true);
    }
  });

  it('that leave one point like spokes end where they are drawn, as near as their other ends are to one another', () => {
    const middle: XY = [5000, 4000];
    // 300 tips on a circle of 500 mm are 10.5 mm apart: less than half an inch. Square ends of 20 mm extend to 500.1
    // mm.
    const { pieces, joints, notices } = buildLevel(drawn([...HOUSE, ...star(300, middle, 500, 20)]));
    const spokes = pieces.filter(({ wall: { id } }) => id.startsWith('s'));
    expect(spokes.length).toBe(300);
    const corners = [...spokes, ...joints].flatMap(({ body }) => body).map(([x, y]) => Math.hypot(x - 5000, y - 4000));
    expect(corners.filter((far) => far > 500.11 && far < 3000)).toEqual([]);
    expect(notices.filter(({ kind }) => kind === 'gap-closed')).toEqual([]);
  });

  it('that nearly meet at one point are told, and keep all that the joints of fewer had', () => {
    const fan = (count: number) =>
      Array.from({ length: count }, (_, i): Wall => {
        const angle = (Math.PI * i) / 60;
        const [ux, uy] = [Math.cos(angle), Math.sin(angle)];
        return wall(`s${i}`, [5000 + 5 * ux, 4000 + 5 * uy], [5000 + 3000 * ux, 4000 + 3000 * uy]);
      });
    const [few, many] = [25, 26].map((count) => buildLevel(drawn([...HOUSE, ...fan(count)])));
    expect(few?.notices.some(({ kind }) => kind === 'walls-crowded')).toBe(false);
    expect(many?.notices.some(({ kind }) => kind === 'walls-crowded')).toBe(true);
    const bodies = [...(many?.pieces ?? []), ...(many?.joints ?? [])].map(({ body }) => ringBody(body));
    for (const [x, y] of (few?.joints ?? []).flatMap(({ body }) => body)) {
      expect(Math.min(...bodies.map((body) => bodyDistance(body, x, y)))).toBeLessThan(0.01);
    }
  });
});
