import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { withoutTracings, withTracing } from '../../../geometry/edit/index.ts';
import { newTracingPlace, tracingRotated, tracingScaled, tracingStraightened } from '../../../geometry/edit/tracing.ts';
import { tracingExtent } from '../../../geometry/level/tracing-extent.ts';
import type { Tracing, XY } from '../../../geometry/plan/model.ts';
import { distance } from '../../../geometry/plane/point.ts';
import { emptyPlan } from '../../../geometry/planfile/empty.ts';
import { parsePlan } from '../../../geometry/planfile/parse.ts';
import { writePlan } from '../../../geometry/planfile/write.ts';

const PICTURE: Tracing = {
  image: 'data:image/png;base64,AAAA',
  name: 'sketch.png',
  width: 800,
  height: 600,
  at: [4000, 3000],
  scale: 10,
  turn: 0,
  opacity: 0.6,
  shown: true,
  locked: false,
};

/** Returns where a pixel of the picture is on the plan, by the definition of the file: scaled, rotated, placed by its middle. */
function onPlan({ at, width, height, scale, turn }: Tracing, [u, v]: XY): XY {
  const angle = (turn * Math.PI) / 180;
  const [x, y] = [(u - width / 2) * scale, (v - height / 2) * scale];
  return [at[0] + x * Math.cos(angle) - y * Math.sin(angle), at[1] + x * Math.sin(angle) + y * Math.cos(angle)];
}

const pixel = fc.tuple(fc.integer({ min: 0, max: 800 }), fc.integer({ min: 0, max: 600 }));
const placed = fc
  .record({
    at: fc.tuple(fc.integer({ min: -9000, max: 9000 }), fc.integer({ min: -9000, max: 9000 })),
    scale: fc.integer({ min: 1, max: 400 }).map((n) => n / 10),
    turn: fc.integer({ min: -180, max: 180 }),
  })
  .map((where): Tracing => ({ ...PICTURE, ...where }));

describe('tracingScaled(picture, a, b, length)', () => {
  it('makes the line between two of its pixels as long as it is said to be, and leaves the first where it is', () => {
    fc.assert(
      fc.property(placed, pixel, pixel, fc.integer({ min: 100, max: 30_000 }), (picture, p, q, length) => {
        fc.pre(distance(p, q) > 5);
        const [a, b] = [onPlan(picture, p), onPlan(picture, q)];
        const next = tracingScaled(picture, a, b, length);
        // `at` is rounded to a thousandth of a mm.
        expect(distance(onPlan(next, p), onPlan(next, q))).toBeCloseTo(length, 2);
        expect(distance(onPlan(next, p), a)).toBeLessThan(0.01);
        expect(next.turn).toBe(picture.turn);
      }),
    );
  });

  it('changes nothing where the two points are one', () => {
    expect(tracingScaled(PICTURE, [1, 1], [1, 1], 1000)).toBe(PICTURE);
  });
});

describe('straightened(picture, a, b)', () => {
  it('brings the line level or plumb by at most an eighth of a turn, and keeps every length', () => {
    fc.assert(
      fc.property(placed, pixel, pixel, (picture, p, q) => {
        fc.pre(distance(p, q) > 20);
        const [a, b] = [onPlan(picture, p), onPlan(picture, q)];
        const next = tracingStraightened(picture, a, b);
        const [c, d] = [onPlan(next, p), onPlan(next, q)];
        const off = Math.min(Math.abs(d[0] - c[0]), Math.abs(d[1] - c[1]));
        // A thousandth of a degree over the line's length, and the rounding of `at`.
        expect(off).toBeLessThan(distance(c, d) * 2e-5 + 0.01);
        expect(distance(c, d)).toBeCloseTo(distance(a, b), 6);
        const by = Math.abs(next.turn - picture.turn);
        expect(Math.min(by, 360 - by)).toBeLessThanOrEqual(45.001);
      }),
    );
  });
});

describe('tracingRotated(picture, angle, about)', () => {
  it('leaves the point that it turns about where it is, and a whole turn changes nothing', () => {
    fc.assert(
      fc.property(placed, pixel, fc.integer({ min: -720, max: 720 }), (picture, p, by) => {
        const about = onPlan(picture, p);
        const next = tracingRotated(picture, by, about);
        expect(distance(onPlan(next, p), about)).toBeLessThan(0.01);
        expect(next.turn).toBeGreaterThan(-180);
        expect(next.turn).toBeLessThanOrEqual(180);
        const round = tracingRotated(picture, 360, about);
        expect(distance(round.at, picture.at)).toBeLessThan(0.001);
      }),
    );
  });
});

describe('newTracingPlace(extent, middle, width, height)', () => {
  it('covers what is drawn, by the middle, in its own proportions', () => {
    const extent = { minX: 0, minY: 0, maxX: 9000, maxY: 3000 };
    const { at, scale } = newTracingPlace(extent, [0, 0], 800, 600);
    expect(at).toEqual([4500, 1500]);
    const covered = tracingExtent({ ...PICTURE, at, scale });
    expect(covered.maxX - covered.minX).toBeCloseTo(9000, 9);
    expect(covered.maxY - covered.minY).toBeGreaterThanOrEqual(3000);
  });

  it('is as wide as a house where nothing is drawn: 40 ft', () => {
    expect(newTracingPlace(null, [100, 200], 800, 600)).toEqual({ at: [100, 200], scale: 12_192 / 800 });
  });
});

describe('a plan with a picture under its level', () => {
  const plan = emptyPlan();
  const level = plan.levels[0]?.id ?? '';
  const edited = withTracing(plan, level, PICTURE);

  it('is read back as it was written', () => {
    expect(edited.ok && parsePlan(writePlan(edited.plan))).toEqual({ ok: true, plan: edited.ok && edited.plan });
  });

  it('comes out as it was without the picture, and a plan without one is left alone', () => {
    expect(edited.ok && withoutTracings(edited.plan)).toEqual(plan);
    expect(withoutTracings(plan)).toBe(plan);
  });

  it('is refused with a picture that lies elsewhere, has no scale, or is of another kind', () => {
    const refusal = (change: object) => {
      const result = withTracing(plan, level, { ...PICTURE, ...change });
      return result.ok ? '' : result.reason;
    };
    expect(refusal({ image: 'https://example.org/a.png' })).toBe(
      'The picture under the level: "image" is "https://example.org/a.png", needs a picture as a data address (PNG, JPEG or WebP, base64).',
    );
    expect(refusal({ image: 'data:image/svg+xml;base64,AAAA' })).toContain('needs a picture');
    expect(refusal({ scale: 0 })).toContain('"scale" is 0, needs a number of mm, more than 0');
  });
});
