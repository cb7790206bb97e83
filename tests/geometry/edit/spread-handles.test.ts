import { describe, expect, it } from 'vitest';
import { type Handle, handlesOf } from '../../../geometry/edit/reshape.ts';
import { spreadHandles } from '../../../geometry/edit/spread-handles.ts';
import type { Level, XY } from '../../../geometry/plan/model.ts';
import { distance } from '../../../geometry/plane/point.ts';
import { parsePlan } from '../../../geometry/planfile/parse.ts';
import { SAMPLE_NAMES, sampleText } from '../../helpers/sample-files.ts';

/** All zoom factors of the sheet, px per mm: from a street in view to an eighth of an inch as wide as a finger. */
const SCALES = Array.from({ length: 28 }, (_, step) => 0.002 * (15 / 0.002) ** (step / 27));
/** Least distance of handles for a mouse and for a finger, px. */
const GAPS = [24, 44] as const;
/** Distance of the rotation handle from the box, px: as in the editor. */
const OFF = 28;

const levels: readonly Level[] = SAMPLE_NAMES.flatMap((name) => {
  const parsed = parsePlan(sampleText(name));
  return parsed.ok ? parsed.plan.levels : [];
});
const idsOf = ({ walls, openings, fixtures, objects }: Level) =>
  [...walls, ...openings, ...fixtures, ...objects].map(({ id }) => id);
/** Returns the least distance of two points, mm; infinite for one point. */
const least = (points: readonly XY[]) =>
  Math.min(...points.flatMap((a, index) => points.slice(index + 1).map((b) => distance(a, b))));
const corner = (index: number, at: XY): Handle => ({ kind: 'corner', id: 'o1', index, at });

describe('handles of every thing of every sample', () => {
  it.each(GAPS)('are at least %d px apart at every zoom, none further from its point than three gaps', (gap) => {
    let [seen, moved, nearest, furthest] = [0, 0, Number.POSITIVE_INFINITY, 0];
    for (const level of levels) {
      for (const id of idsOf(level)) {
        for (const scale of SCALES) {
          const shown = spreadHandles(handlesOf(level, id, OFF / scale), gap / scale);
          const aside = shown.map(({ at, shownAt }) => distance(at, shownAt) * scale);
          seen += shown.length;
          moved += aside.filter((px) => px > 0).length;
          nearest = Math.min(nearest, least(shown.map(({ shownAt }) => shownAt)) * scale);
          furthest = Math.max(furthest, ...aside);
        }
      }
    }
    console.log(
      `${seen} handles at ${SCALES.length} zooms, ${moved} shown aside: least distance ${nearest.toFixed(2)} px, at most ${furthest.toFixed(1)} px from their points`,
    );
    expect(seen).toBeGreaterThan(10_000);
    expect(nearest).toBeGreaterThanOrEqual(gap - 1e-6);
    expect(furthest).toBeLessThanOrEqual(3 * gap);
  });
});

describe('handles that are spread', () => {
  it('stay at their points where they have room', () => {
    const far = [corner(0, [0, 0]), corner(1, [100, 0]), corner(2, [100, 60])];
    expect(spreadHandles(far, 60).map(({ shownAt }) => shownAt)).toEqual(far.map(({ at }) => at));
  });

  it('part even where all lie at one point, thirty of them too', () => {
    const heap = Array.from({ length: 30 }, (_, index) => corner(index, [5, 5 + index * 1e-9]));
    expect(least(spreadHandles(heap, 24).map(({ shownAt }) => shownAt))).toBeGreaterThanOrEqual(24);
    const one = [corner(0, [5, 5]), corner(1, [5, 5]), corner(2, [5, 5])];
    expect(least(spreadHandles(one, 24).map(({ shownAt }) => shownAt))).toBeGreaterThanOrEqual(24);
  });

  it('keep their order and what they are handles of, and leave the handles given as they were', () => {
    const pair = [corner(0, [0, 0]), corner(1, [2, 0])];
    const [a, b] = spreadHandles(pair, 24);
    expect([a?.at, b?.at, pair[0]?.at]).toEqual([
      [0, 0],
      [2, 0],
      [0, 0],
    ]);
    expect((a?.shownAt[0] ?? 0) < (b?.shownAt[0] ?? 0)).toBe(true);
  });
});
