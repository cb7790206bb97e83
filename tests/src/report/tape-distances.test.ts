import { expect, it } from 'vitest';
import { buildLevel } from '../../../geometry/level/build-level.ts';
import type { XY } from '../../../geometry/plan/model.ts';
import { readLength } from '../../../src/editor/lengths/boxes/read-length.ts';
import { tapeWords } from '../../../src/report/tape-distances.ts';
import { drawn, loop, planOf, rectangle } from '../../helpers/drawn.ts';
import { level, openRoom } from '../../helpers/tool-stage.ts';

// Common practice, no published source: a tape is held square to a wall, unless somebody is told otherwise.

const at: XY = [2000, 1000];
const LEANING: readonly XY[] = [
  [0, 0],
  [3500, 0],
  [4000, 3000],
  [0, 3000],
];
const detector = { id: 'd1', label: 'A1', at, base: 762, radius: 50, tall: 25.4, pair: null };
const wordsIn = (corners: readonly XY[]): string => {
  const room = drawn(loop('w', corners), { detectors: [detector] });
  return tapeWords(planOf(room), buildLevel(room), detector);
};

it('says the direction of a tape that ends at a slanted wall', () => {
  expect(wordsIn(LEANING)).toMatch(/^East wall [^,(]* \(straight across the page\), north wall [^,(]*$/);
});

it('says none where the walls are square to the page', () => {
  expect(wordsIn(rectangle(0, 0, 3500, 3000))).not.toMatch(/page/);
});

it('asks for a typed distance in the same words', () => {
  openRoom({ walls: loop('w', LEANING), objects: [], detectors: [detector] });
  expect(level().detectors).toHaveLength(1);
  const labels = ([0, 1] as const).map((axis) => readLength({ of: 'gap', id: 'd1', axis })?.label);
  expect(labels).toEqual(['From the right wall, straight across the page', 'From the upper wall']);
});
