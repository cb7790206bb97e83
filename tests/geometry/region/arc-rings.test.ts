import { describe, expect, it } from 'vitest';
import type { Edge } from '../../../geometry/arrangement/types.ts';
import type { XY } from '../../../geometry/plan/model.ts';
import { arcRingsContain, edgeEnds } from '../../../geometry/region/nearest.ts';
import { Dice } from '../../helpers/random-level/dice.ts';

describe('arcRingsContain(rings, p)', () => {
  const turn = (start: number, sweep: number): Edge => ({ kind: 'arc', center: [0, 0], radius: 10, start, sweep });
  /** A ring between circles of 10 and 4. */
  const annulus = [
    [turn(0, Math.PI), turn(Math.PI, Math.PI)],
    [
      { kind: 'arc', center: [0, 0], radius: 4, start: 0, sweep: -Math.PI } as const,
      { kind: 'arc', center: [0, 0], radius: 4, start: -Math.PI, sweep: -Math.PI } as const,
    ],
  ];
  /** The half of the disc below the x axis (y down): an arc and its chord. */
  const half = [[turn(0, Math.PI), { kind: 'line', from: [-10, 0], to: [10, 0] } as const]];

  it.each<{ p: XY; inAnnulus: boolean; inHalf: boolean }>([
    { p: [0, 0.001], inAnnulus: false, inHalf: true },
    { p: [0, 7], inAnnulus: true, inHalf: true },
    { p: [0, -7], inAnnulus: true, inHalf: false },
    { p: [-7, 0.001], inAnnulus: true, inHalf: true },
    { p: [7, -0.001], inAnnulus: true, inHalf: false },
    { p: [7.08, 7.08], inAnnulus: false, inHalf: false },
    { p: [7.06, 7.06], inAnnulus: true, inHalf: true },
    { p: [-20, 3], inAnnulus: false, inHalf: false },
    { p: [2.8, 2.8], inAnnulus: false, inHalf: true },
  ])('$p', ({ p, inAnnulus, inHalf }) => {
    expect(arcRingsContain(annulus, p)).toBe(inAnnulus);
    expect(arcRingsContain(half, p)).toBe(inHalf);
  });

  it.each([
    ['left to right', Math.PI],
    ['right to left', 0],
    ['downward', -Math.PI / 2],
    ['upward', Math.PI / 2],
  ])('holds a point exactly on the chord of an arc that runs %s, bulging to either side', (_, start) => {
    // Half a disc of 0.25 mm at a place where its ends are exact, and a square on the other side of the chord.
    const [x, y, r] = [4096, 4096, 0.25];
    const [along, out] = [
      [-Math.round(Math.cos(start)) * 2 * r, -Math.round(Math.sin(start)) * 2 * r],
      [Math.round(Math.sin(start)), -Math.round(Math.cos(start))],
    ] as [XY, XY];
    const a: XY = [x - along[0] / 2, y - along[1] / 2];
    const b: XY = [x + along[0] / 2, y + along[1] / 2];
    for (const sweep of [Math.PI, -Math.PI]) {
      // An arc that runs clockwise on screen bulges to the left of its direction, and the square is on the right.
      const side = sweep > 0 ? 2 * r : -2 * r;
      const [c, d]: [XY, XY] = [
        [b[0] + out[0] * side, b[1] + out[1] * side],
        [a[0] + out[0] * side, a[1] + out[1] * side],
      ];
      const ring: Edge[] = [
        { kind: 'arc', center: [x, y], radius: r, start, sweep },
        { kind: 'line', from: b, to: c },
        { kind: 'line', from: c, to: d },
        { kind: 'line', from: d, to: a },
      ];
      const at = (share: number, far: number): XY => [
        x + along[0] * share + out[0] * far * Math.sign(side),
        y + along[1] * share + out[1] * far * Math.sign(side),
      ];
      for (const share of [-0.25, 0, 0.3]) {
        expect(arcRingsContain([ring], at(share, 0))).toBe(true);
        expect(arcRingsContain([ring], at(share, 0.2))).toBe(true);
        expect(arcRingsContain([ring], at(share, -0.2))).toBe(true);
        expect(arcRingsContain([ring], at(share, 0.6))).toBe(false);
        expect(arcRingsContain([ring], at(share, -0.3))).toBe(false);
      }
    }
  });

  it('is not misled where the line of sight runs exactly through a corner or along the top of an arc', () => {
    const dice = new Dice(20);
    for (let round = 0; round < 300; round++) {
      const center: XY = [dice.between(-5000, 5000), dice.pick([0, 1000, dice.between(-5000, 5000)])];
      const radius = dice.pick([965.2, 1270, dice.between(1, 3000)]);
      const count = dice.pick([2, 3, 4, 4, 7]);
      const from = dice.pick([-Math.PI, 0, dice.between(-3, 3)]);
      const sweep = (dice.pick([1, -1]) * 2 * Math.PI) / count;
      const ring = Array.from(
        { length: count },
        (_, k): Edge => ({ kind: 'arc', center, radius, start: from + k * sweep, sweep }),
      );
      const heights = ring.flatMap((edge) => edgeEnds(edge).map(([, y]) => y));
      for (const y of [...heights, center[1] - radius, center[1] + radius, center[1]]) {
        for (const off of [-1.5, -1.01, -0.5, 0.3, 0.99, 1.2]) {
          const p: XY = [center[0] + off * radius, y];
          const out = Math.hypot(p[0] - center[0], p[1] - center[1]) - radius;
          if (Math.abs(out) > 1e-6) expect(arcRingsContain([ring], p), `${p}`).toBe(out < 0);
        }
      }
    }
  });
});

describe('arcRingsContain(rings, p), on the outline itself', () => {
  const ringOf = (corners: readonly XY[]) =>
    corners.map((from, i): Edge => ({ kind: 'line', from, to: corners[(i + 1) % corners.length] as XY }));

  it('does not depend on which way the outline runs', () => {
    const dice = new Dice(11);
    for (let i = 0; i < 300; i++) {
      const unit = dice.pick([0.125, 1]);
      const corners = [0, 1, 2].map((): XY => [dice.int(0, 4) * unit, dice.int(0, 4) * unit]);
      const [a, b] = corners as [XY, XY];
      // Halves of small whole numbers and of eighths are exact.
      const on: XY = [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2];
      const turned = [...corners].reverse();
      expect(arcRingsContain([ringOf(corners)], on)).toBe(arcRingsContain([ringOf(turned)], on));
    }
  });

  it('of the two areas beside a line holds one', () => {
    const dice = new Dice(12);
    const square = (x: number, y: number): XY[] => [
      [x, y],
      [x + 8, y],
      [x + 8, y + 8],
      [x, y + 8],
    ];
    for (let i = 0; i < 300; i++) {
      const [one, two]: [XY, XY] = [
        [dice.int(1, 7), 0],
        [dice.int(1, 7), 8],
      ];
      const left = ringOf([[0, 0], one, two, [0, 8]]);
      const right = ringOf([one, [8, 0], [8, 8], two]);
      const on: XY = [(one[0] + two[0]) / 2, 4];
      expect([left, right].filter((ring) => arcRingsContain([ring], on))).toHaveLength(1);
    }
    // Left and upper sides are inside.
    expect(
      [
        [0, 4],
        [8, 4],
        [4, 0],
        [4, 8],
      ].map((p) => arcRingsContain([ringOf(square(0, 0))], p as unknown as XY)),
    ).toEqual([true, false, true, false]);
  });
});
