import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Edge } from '../../../geometry/arrangement/types.ts';
import type { XY } from '../../../geometry/plan/model.ts';
import { distance } from '../../../geometry/plane/point.ts';
import { labelLine, polylineLength } from '../../../geometry/region/label-line.ts';
import { nearestOnEdge } from '../../../geometry/region/nearest.ts';
import type { Zone } from '../../../geometry/region/types.ts';
import { edgeLength, onEdge, visibleEdges } from '../../../geometry/region/visible-edges.ts';
import { howMany } from '../../helpers/how-many.ts';

function discZone(x: number, y: number, radius: number, rule: Zone['rule'] = 'sump'): Zone {
  const half = (start: number): Edge => ({ kind: 'arc', center: [x, y], radius, start, sweep: Math.PI });
  return { rule, subject: null, distance: radius, keepOut: false, outlines: [[half(-Math.PI), half(0)]] };
}

function boxZone(x: number, y: number, width: number, height: number): Zone {
  return ringZone([
    [x, y],
    [x + width, y],
    [x + width, y + height],
    [x, y + height],
  ]);
}

function ringZone(corners: readonly XY[]): Zone {
  const ring = corners.map((from, i): Edge => ({ kind: 'line', from, to: corners[(i + 1) % corners.length] ?? from }));
  return { rule: 'sump', subject: null, distance: 0, keepOut: false, outlines: [ring] };
}

/** The visible length of a zone's outline, mm. */
function seen(zone: Zone, zones: readonly Zone[]): number {
  return (visibleEdges(zones).get(zone) ?? []).flat().reduce((sum, edge) => sum + edgeLength(edge), 0);
}

describe('visibleEdges(zones)', () => {
  it('shows the whole outline of a zone that stands alone', () => {
    const disc = discZone(0, 0, 2000);
    expect(seen(disc, [disc])).toBeCloseTo(2 * Math.PI * 2000, 3);
  });

  it('shows the same of an outline that runs the other way round', () => {
    const third = (start: number): Edge => ({
      ...{ kind: 'arc', center: [0, 0], radius: 1000 },
      ...{ start, sweep: (2 * Math.PI) / 3 },
    });
    const disc = { ...discZone(0, 0, 1000), outlines: [[0, 1, 2].map((i) => third((i * 2 * Math.PI) / 3))] };
    const reversed = (edge: Edge): Edge =>
      edge.kind === 'line'
        ? { ...edge, from: edge.to, to: edge.from }
        : { ...edge, start: edge.start + edge.sweep, sweep: -edge.sweep };
    const back = { ...disc, outlines: disc.outlines.map((ring) => [...ring].reverse().map(reversed)) };
    const box = boxZone(300, -2000, 5000, 2700);
    const [forth, again] = [disc, back].map((one) => [seen(one, [one, box]), seen(box, [one, box])]);
    // The disc is visible left of x = 300, and right of it below y = 700.
    const [left, low] = [Math.acos(0.3), Math.asin(0.7)];
    expect(forth?.[0]).toBeCloseTo(1000 * (2 * Math.PI - left - low), 3);
    expect(again?.[0]).toBeCloseTo(forth?.[0] ?? 0, 6);
    expect(again?.[1]).toBeCloseTo(forth?.[1] ?? 0, 6);
  });

  it('shows the same of an outline in eight arcs', () => {
    const eighth = (i: number): Edge => ({
      ...{ kind: 'arc', center: [0, 0], radius: 1000 },
      ...{ start: (i * Math.PI) / 4, sweep: Math.PI / 4 },
    });
    const disc = { ...discZone(0, 0, 1000), outlines: [[0, 1, 2, 3, 4, 5, 6, 7].map(eighth)] };
    // It covers the disc right of x = 300 above y = 700; none of the cuts is in the middle of an arc.
    const box = boxZone(300, -2000, 5000, 2700);
    const [left, low] = [Math.acos(0.3), Math.asin(0.7)];
    expect(seen(disc, [disc, box])).toBeCloseTo(1000 * (2 * Math.PI - left - low), 3);
  });

  it('shows all of a side that another box only lies against', () => {
    const box = boxZone(0, 0, 1000, 1000);
    for (const beside of [
      boxZone(-500, 100, 500, 200),
      boxZone(1000, 100, 500, 200),
      boxZone(100, -500, 200, 500),
      boxZone(100, 1000, 200, 500),
    ])
      expect(seen(box, [box, beside])).toBeCloseTo(4000, 3);
  });

  it('keeps a side whole that another zone only touches', () => {
    const diamond = ringZone([
      [0, 0],
      [1000, -1000],
      [2000, 0],
      [1000, 1000],
    ]);
    const tip = ringZone([
      [1500, -500],
      [2000, -1500],
      [2500, -1000],
    ]);
    for (const touching of [discZone(1500 + 300, -500 - 300, Math.hypot(300, 300)), tip]) {
      const [around, ...more] = visibleEdges([diamond, touching]).get(diamond) ?? [];
      expect(more).toEqual([]);
      expect(around).toHaveLength(4);
      expect(seen(diamond, [diamond, touching])).toBeCloseTo(4 * Math.hypot(1000, 1000), 6);
    }
  });

  it('of a zone whose neighbor was replaced shows what the new one leaves', () => {
    const disc = discZone(0, 0, 1000);
    const [half, none] = [boxZone(0, -2000, 3000, 4000), boxZone(-2000, -2000, 4000, 4000)];
    expect(seen(disc, [disc, half])).toBeCloseTo(Math.PI * 1000, 3);
    expect(seen(disc, [disc, none])).toBe(0);
    expect(seen(disc, [disc, half])).toBeCloseTo(Math.PI * 1000, 3);
  });

  it('shows the whole outline of zones far apart, side by side and in any order', () => {
    const row = [7000, 0, 3000, 5000, 1000].map((x) => boxZone(x, 0, 500, 500));
    for (const zone of row) expect(seen(zone, row)).toBeCloseTo(2000, 3);
  });

  it('shows a gap of a hundredth of a millimeter, and one of a tenth of a degree round an arc', () => {
    const zones = [boxZone(0, 0, 4000, 1000), boxZone(150, -500, 1950, 1000), boxZone(2100.01, -500, 1700, 1000)];
    const [long] = zones as [Zone];
    const [narrow] = (visibleEdges(zones).get(long) ?? []).flat().filter((edge) => edgeLength(edge) < 150);
    expect(edgeLength(narrow as Edge)).toBeCloseTo(0.01, 6);
    const disc = discZone(0, 0, 1000);
    const width = 2 * 1000 * Math.sin(Math.PI / 3600);
    const halves = [boxZone(-2000, -3000, 4000, 3000 - width / 2), boxZone(-2000, width / 2, 4000, 3000)];
    expect(seen(disc, [disc, ...halves])).toBeCloseTo((2 * Math.PI * 1000) / 1800, 6);
  });

  it('of three in a row the middle one is covered from both sides, in any order', () => {
    const [a, b, c] = [discZone(0, 0, 1000), discZone(1000, 0, 1000), discZone(2000, 0, 1000)];
    for (const zones of [
      [a, b, c],
      [c, b, a],
      [b, c, a],
    ])
      expect(seen(b, zones)).toBeCloseTo((2 / 3) * Math.PI * 1000, 1);
  });

  it('of two discs that pass through each other’s middle shows two thirds of either', () => {
    const [a, b] = [discZone(0, 0, 2000), discZone(2000, 0, 2000)];
    expect(seen(a, [a, b])).toBeCloseTo((4 / 3) * Math.PI * 2000, 1);
    expect(seen(b, [a, b])).toBeCloseTo((4 / 3) * Math.PI * 2000, 1);
    expect(seen(a, [discZone(30_000, 0, 2000), a, b])).toBeCloseTo((4 / 3) * Math.PI * 2000, 1);
    // The same with other zones far away, listed first.
    const others = [discZone(30_000, 0, 2000), discZone(-30_000, 0, 2000)];
    expect(seen(a, [...others, a, b])).toBeCloseTo((4 / 3) * Math.PI * 2000, 1);
    expect(seen(b, [...others, b, a])).toBeCloseTo((4 / 3) * Math.PI * 2000, 1);
  });

  it('of a box across the corner of another shows what sticks out', () => {
    const [a, b] = [boxZone(0, 0, 3000, 2000), boxZone(1000, 1500, 4000, 3000)];
    // Of a: 10 000 around, minus 2000 along its foot and 500 along its side.
    expect(seen(a, [a, b])).toBeCloseTo(10_000 - 2500, 1);
    expect(seen(b, [a, b])).toBeCloseTo(14_000 - 2500, 1);
  });

  it('shows nothing of a zone inside another of its rule, and all of it inside one of another rule', () => {
    const [large, small, other] = [discZone(0, 0, 3000), discZone(200, 0, 500), discZone(0, 0, 3500, 'heat')];
    expect(seen(small, [large, small])).toBe(0);
    expect(seen(small, [other, small])).toBeCloseTo(2 * Math.PI * 500, 3);
  });

  it('runs on over the corner that the outline begins at, and round a whole outline once', () => {
    const [disc, hiding] = [discZone(0, 0, 2000), discZone(2500, 0, 1000)];
    expect(visibleEdges([disc]).get(disc)).toHaveLength(1);
    // The outline starts on the left, away from the zone that covers it: the visible part is one stretch around that
    // corner.
    expect(visibleEdges([disc, hiding]).get(disc)).toHaveLength(1);
  });

  it('begins anew behind a side that is covered whole', () => {
    // The disc passes the ends of the right side of the box, half a micron outside them, and bulges away from it.
    const box = boxZone(0, 0, 1000, 1000);
    const zones = [box, discZone(1500, 500, Math.hypot(500, 500) + 0.0005)];
    const corners = (visibleEdges(zones).get(box) ?? []).map((stretch) =>
      stretch.map((edge) => (edge.kind === 'line' ? edge.from.map(Math.round) : [])),
    );
    expect(corners).toEqual([
      [
        [1000, 1000],
        [0, 1000],
        [0, 0],
      ],
    ]);
  });

  it('sees a new neighbor, and one that is gone', () => {
    const [disc, hiding] = [discZone(0, 0, 2000), discZone(2000, 0, 2000)];
    const whole = seen(disc, [disc]);
    const partly = seen(disc, [disc, hiding]);
    expect(partly).toBeLessThan(whole - 1000);
    expect(seen(disc, [disc])).toBe(whole);
    expect(seen(disc, [disc, hiding])).toBe(partly);
  });
});

describe('discs and boxes at random', () => {
  const place = fc.integer({ min: 0, max: 4000 });
  const size = fc.integer({ min: 100, max: 1500 });
  const disc = fc.tuple(place, place, size).map(([x, y, radius]) => ({
    zone: discZone(x, y, radius),
    /** Inside is less than 0. */
    depth: ([px, py]: XY) => Math.hypot(px - x, py - y) - radius,
  }));
  const box = fc.tuple(place, place, size, size).map(([x, y, width, height]) => ({
    zone: boxZone(x, y, width, height),
    depth: ([px, py]: XY) => Math.max(x - px, px - x - width, y - py, py - y - height),
  }));

  it('show each point that no other one holds, and no other point', () => {
    fc.assert(
      fc.property(fc.array(fc.oneof(disc, box), { minLength: 2, maxLength: 12 }), (all) => {
        const shown = visibleEdges(all.map(({ zone }) => zone));
        for (const { zone } of all) {
          const others = all.filter((each) => each.zone !== zone);
          const seenEdges = (shown.get(zone) ?? []).flat();
          for (const edge of zone.outlines.flat())
            for (let i = 0; i < 50; i++) {
              const at = onEdge(edge, (i + 0.37) / 50);
              const depth = Math.min(...others.map((other) => other.depth(at)));
              if (Math.abs(depth) < 0.01) continue; // on the outline of another one
              const isSeen = seenEdges.some((part) => distance(nearestOnEdge(part, at), at) < 1e-6);
              expect(isSeen).toBe(depth > 0);
            }
        }
      }),
      { numRuns: howMany(60, 400) },
    );
  });
});

describe('labelLine(seen, floors)', () => {
  const box = (x: number, y: number, width: number, height: number): readonly XY[] => [
    [x, y],
    [x + width, y],
    [x + width, y + height],
    [x, y + height],
  ];

  it('is the longest stretch of the edge that lies on a floor', () => {
    const disc = discZone(0, 0, 2000);
    const edges = visibleEdges([disc]).get(disc) ?? [];
    const whole = labelLine(edges, [[box(-5000, -5000, 10_000, 10_000)]]);
    // Chords of 2 degrees are shorter than their arcs by less than a tenth of a percent.
    expect(polylineLength(whole ?? []) / (2 * Math.PI * 2000)).toBeGreaterThan(0.999);
    // A floor with a sixth of the circle on its right, and one with less on its left.
    const right = labelLine(edges, [[box(1732, -5000, 5000, 10_000)], [box(-5000, -500, 3000, 1000)]]);
    expect(polylineLength(right ?? [])).toBeGreaterThan(2000);
    expect(polylineLength(right ?? [])).toBeLessThan((2 * Math.PI * 2000) / 6 + 1);
    expect(right?.every(([x]) => x >= 1732)).toBe(true);
  });

  it('of two that are equally long is the first', () => {
    const lines = [0, 1000].map((y): Edge[] => [{ kind: 'line', from: [0, y], to: [600, y] }]);
    const line = labelLine(lines, [[box(-100, -100, 2000, 2000)]]);
    expect(line?.length).toBe(11);
    expect(line?.[0]).toEqual([0, 0]);
    expect(line?.at(-1)).toEqual([600, 0]);
  });

  it('is none where no floor holds any of it, or nothing is seen', () => {
    const disc = discZone(0, 0, 2000);
    const edges = visibleEdges([disc]).get(disc) ?? [];
    expect(labelLine(edges, [[box(3000, 3000, 1000, 1000)]])).toBeNull();
    expect(labelLine([], [[box(-5000, -5000, 10_000, 10_000)]])).toBeNull();
  });
});
