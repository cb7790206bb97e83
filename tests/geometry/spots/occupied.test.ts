import { describe, expect, it } from 'vitest';
import { buildLevel, type Fixture, isOccupied, type XY } from '../../../geometry/index.ts';
import { drawn } from '../../helpers/drawn.ts';

/** 27 by 30 in, 38 in high. */
const washer: Fixture = {
  id: 'f',
  kind: 'washer',
  name: '',
  shape: { box: { center: [0, 0], width: 685.8, depth: 762, turn: 0 } },
  bottom: 0,
  top: 965.2,
  stream: null,
};
const model = buildLevel(drawn([], { fixtures: [washer] }));
const at = (base: number, ...axes: XY[]) => isOccupied(model, { base, radius: 50, tall: 25 }, axes);

describe('isOccupied(model, probe, axes)', () => {
  it('is so within a washer, and where the rim reaches into it', () => {
    expect(at(762, [0, 0])).toBe(true);
    expect(at(762, [342.9 + 49, 0])).toBe(true);
    expect(at(762, [2000, 0], [0, 0])).toBe(true);
  });

  it('is not so beside it, nor on its top', () => {
    expect(at(762, [342.9 + 51, 0])).toBe(false);
    expect(at(965.2, [0, 0])).toBe(false);
  });
});
