import { describe, expect, it } from 'vitest';
import { areSideBySide, countLocations } from '../../../geometry/check/side-by-side.ts';
import type { Detector } from '../../../geometry/plan/model.ts';
import { hallDetector } from '../../helpers/hall.ts';

const INCH = 25.4;
/** 8 in between the outer surfaces: ANSI/AARST MALB-2014 with 1/21 revisions, 8.1.2(a); MAH-2019, 8.5.2(d). */
const WITHIN = 8 * INCH;

const detector = (change: Partial<Detector>) =>
  hallDetector({ radius: 2 * INCH, tall: INCH, base: 30 * INCH, ...change });

describe('areSideBySide(a, b)', () => {
  const one = detector({ at: [0, 0] });
  it.each<[string, Partial<Detector>, boolean]>([
    ['8 in from rim to rim', { at: [WITHIN + 4 * INCH, 0] }, true],
    ['more than 8 in from rim to rim', { at: [WITHIN + 4 * INCH + 0.2, 0] }, false],
    // The top of the lower one is 5 in below the underside of the upper one.
    ['one above the other, 5 in apart', { at: [0, 0], base: 36 * INCH }, true],
    ['one above the other, 8 in apart', { at: [0, 0], base: 39 * INCH }, true],
    ['one above the other, more than 8 in apart', { at: [0, 0], base: 39 * INCH + 0.2 }, false],
    // 6 in in plan and 6 in in height: 8.5 in.
    ['6 in aside and 6 in above', { at: [10 * INCH, 0], base: 37 * INCH }, false],
    // 5 in in plan and 6 in in height: 7.8 in.
    ['5 in aside and 6 in above', { at: [9 * INCH, 0], base: 37 * INCH }, true],
  ])('%s: %3$s, whichever is named first', (_, change, expected) => {
    const other = detector(change);
    expect(areSideBySide(one, other)).toBe(expected);
    expect(areSideBySide(other, one)).toBe(expected);
  });
});

describe('countLocations(detectors)', () => {
  it('counts detectors side by side once', () => {
    const row = [0, 9, 60].map((x, i) => detector({ id: `d${i}`, at: [x * INCH, 0] }));
    expect(countLocations(row)).toBe(2);
    expect(countLocations([])).toBe(0);
  });
});
