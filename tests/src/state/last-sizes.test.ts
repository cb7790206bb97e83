import { describe, expect, it } from 'vitest';
import type { Fixture, Opening } from '../../../geometry/plan/model.ts';
import { FIXTURE_DEFAULTS, OBJECT_DEFAULTS, OPENING_DEFAULTS } from '../../../src/state/defaults.ts';
import { fixtureLike, objectLike, openingLike } from '../../../src/state/last-sizes.ts';
import { levelOf } from '../../helpers/level-of.ts';

const register = (id: string, width: number): Fixture => ({
  id,
  kind: 'supply-register',
  name: '',
  shape: { box: { center: [0, 0], width, depth: 101.6, turn: 90 } },
  bottom: 2235.2,
  top: 2286,
  stream: null,
});
const window = (id: string, width: number): Opening => ({
  id,
  wall: 'w1',
  kind: 'window',
  offset: 0,
  width,
  bottom: 1422.4,
  top: 2032,
});

describe('what is put down', () => {
  it('has the usual size where it is the first of its kind', () => {
    const level = levelOf({ fixtures: [register('f1', 304.8)], openings: [window('o1', 914.4)] });
    expect(fixtureLike(level, 'return-grille')).toBe(FIXTURE_DEFAULTS['return-grille']);
    expect(openingLike(level, 'door')).toBe(OPENING_DEFAULTS.door);
    expect(objectLike(level, 'desk')).toBe(OBJECT_DEFAULTS.desk);
  });

  it('is as the last one of its kind, along its own axes and at its height', () => {
    const level = levelOf({
      fixtures: [register('f1', 250), register('f2', 304.8)],
      openings: [window('o1', 914.4), window('o2', 812.8)],
    });
    expect(fixtureLike(level, 'supply-register')).toEqual({
      footprint: { width: 304.8, depth: 101.6 },
      bottom: 2235.2,
      top: 2286,
    });
    expect(openingLike(level, 'window')).toMatchObject({ width: 812.8, bottom: 1422.4, top: 2032 });
  });

  it('has the usual size after one with corners of its own', () => {
    const shape = {
      polygon: {
        points: [
          [0, 0],
          [100, 0],
          [0, 100],
        ],
      },
    } as const;
    const level = levelOf({ fixtures: [{ ...register('f1', 1), shape }] });
    expect(fixtureLike(level, 'supply-register')).toBe(FIXTURE_DEFAULTS['supply-register']);
  });
});
